package plyscape.toolpath;

import java.util.Arrays;

/**
 * The connected patches of wanted nodes, neighbours at corners included, as runs along the rows.
 * The lattice's outermost nodes are never wanted.
 */
final class Patches {

  private int[] first = new int[1024];
  private int[] end = new int[1024];
  private int[] root = new int[1024];
  private int[] nodes;
  private int count;

  /** Of the nodes whose state has the bit {@link RingCover#WANTED}. */
  Patches(Lattice lattice, byte[] state) {
    int columns = lattice.columns();
    int below = 0;
    for (int j = 0; j < lattice.rows(); j++) {
      int from = count;
      addRow(state, j * columns, columns);
      join(below, from, columns);
      below = from;
    }
    nodes = new int[count];
    for (int run = 0; run < count; run++) {
      nodes[find(run)] += end[run] - first[run];
    }
  }

  private void addRow(byte[] state, int base, int columns) {
    int start = -1;
    for (int node = base; node < base + columns; node++) {
      boolean wanted = (state[node] & RingCover.WANTED) != 0;
      if (wanted && start < 0) {
        start = node;
      } else if (!wanted && start >= 0) {
        add(start, node);
        start = -1;
      }
    }
    if (start >= 0) {
      add(start, base + columns);
    }
  }

  private void add(int from, int to) {
    if (count == first.length) {
      first = Arrays.copyOf(first, 2 * count);
      end = Arrays.copyOf(end, 2 * count);
      root = Arrays.copyOf(root, 2 * count);
    }
    first[count] = from;
    end[count] = to;
    root[count] = count++;
  }

  /** Joins the runs of the last row with those that touch them in the row below. */
  private void join(int below, int from, int columns) {
    int under = below;
    for (int run = from; run < count; run++) {
      int left = first[run] - columns;
      int right = end[run] - columns;
      while (under < from && end[under] < left) {
        under++;
      }
      for (int other = under; other < from && first[other] <= right; other++) {
        root[find(other)] = find(run);
      }
    }
  }

  private int find(int run) {
    int at = run;
    while (root[at] != at) {
      root[at] = root[root[at]];
      at = root[at];
    }
    return at;
  }

  /** Runs in all, from the lowest row up, left to right. */
  int runs() {
    return count;
  }

  /** First node of a run. */
  int first(int run) {
    return first[run];
  }

  /** The node past a run's last. */
  int end(int run) {
    return end[run];
  }

  /** Nodes of the patch that a run belongs to. */
  int nodes(int run) {
    return nodes[find(run)];
  }
}
