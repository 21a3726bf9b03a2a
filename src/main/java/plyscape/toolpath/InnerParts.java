package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The connected parts of what lies far enough inside a field, as {@link InnerPart}s. */
final class InnerParts {

  private final Lattice lattice;
  private final int[] labels;
  private final List<InnerPart> parts = new ArrayList<>();

  /**
   * @param field values at the nodes
   * @param least value of what belongs to a part
   * @param mask where to look
   */
  InnerParts(Lattice lattice, float[] field, double least, CoarseMap mask) {
    this.lattice = lattice;
    int columns = lattice.columns();
    labels = new int[lattice.size()];
    for (int j = 1; j < lattice.rows() - 1; j++) {
      if (mask.anyInRow(j)) {
        for (int i = 1; i < columns - 1; i++) {
          labels[j * columns + i] = field[j * columns + i] >= least && mask.has(i, j) ? -1 : 0;
        }
      }
    }
    int[] queue = new int[1 << 12];
    for (int node = columns; node < labels.length - columns; node++) {
      if (labels[node] < 0) {
        queue = flood(node, queue);
      }
    }
  }

  private int[] flood(int start, int[] room) {
    int[] queue = room;
    int[] ways = {1, -1, lattice.columns(), -lattice.columns()};
    int label = parts.size() + 1;
    int tail = 0;
    queue[tail++] = start;
    labels[start] = label;
    for (int head = 0; head < tail; head++) {
      if (tail + ways.length > queue.length) {
        queue = Arrays.copyOf(queue, 2 * queue.length);
      }
      for (int way : ways) {
        int next = queue[head] + way;
        if (labels[next] < 0) {
          labels[next] = label;
          queue[tail++] = next;
        }
      }
    }
    parts.add(new InnerPart(lattice, labels, label, queue, tail));
    return queue;
  }

  /** All, in the order of the lattice's rows. */
  List<InnerPart> all() {
    return List.copyOf(parts);
  }

  /** Position of the part that a ring lies in or around, or -1. */
  int of(Ring ring) {
    int[] ways = {0, 1, -1, lattice.columns(), -lattice.columns()};
    for (int i = 0; i < ring.size(); i++) {
      int node = lattice.nearest(ring.x()[i], ring.y()[i]);
      for (int way : ways) {
        int label = labels[Math.max(0, Math.min(labels.length - 1, node + way))];
        if (label > 0) {
          return label - 1;
        }
      }
    }
    return -1;
  }
}
