package plyscape.toolpath.cover;

import java.util.Arrays;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Lattice;

/**
 * The connected patches of some nodes of a lattice, as runs along its rows; neighbours at corners
 * are connected. The lattice's outermost nodes must not be among them.
 */
final class Patches {

  private final int columns;

  private final int[] nodes;
  private int[] first = new int[1024];
  private int[] end = new int[1024];
  private int[] root = new int[1024];
  private int count;

  /** Looks through neighbours in a row for nodes that are sought, and adds their runs. */
  private interface Scan {
    void nodes(Patches into, int from, int last);
  }

  private Patches(Lattice lattice, CoarseMap where, Scan scan) {
    columns = lattice.columns();
    int below = 0;
    for (int j = 0; j < lattice.rows(); j++) {
      int from = count;
      where.eachRun(j, (begin, last) -> scan.nodes(this, begin, last));
      join(below, from);
      below = from;
    }
    nodes = new int[count];
    for (int run = 0; run < count; run++) {
      nodes[patch(run)] += end[run] - first[run];
    }
  }

  /**
   * The patches of nodes whose state has the bit {@link RingCover#WANTED}.
   *
   * @param where blocks outside which none has it
   */
  static Patches wanted(Lattice lattice, byte[] state, CoarseMap where) {
    return new Patches(
        lattice,
        where,
        (into, from, last) -> {
          int start = -1;
          for (int node = from; node <= last; node++) {
            boolean wanted = (state[node] & RingCover.WANTED) != 0;
            if (wanted != start >= 0) {
              start = into.turn(start, node);
            }
          }
          if (start >= 0) {
            into.add(start, last + 1);
          }
        });
  }

  /** Begins a run at a node, or ends there the one begun; where the open run begins, or -1. */
  private int turn(int start, int node) {
    if (start < 0) {
      return node;
    }
    add(start, node);
    return -1;
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
  private void join(int below, int from) {
    int under = below;
    for (int run = from; run < count; run++) {
      int left = first[run] - columns - 1;
      int right = end[run] - columns + 1;
      while (under < from && end[under] <= left) {
        under++;
      }
      for (int other = under; other < from && first[other] < right; other++) {
        root[patch(other)] = patch(run);
      }
    }
  }

  /** The run that stands for all of the patch that a run belongs to. */
  int patch(int run) {
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
    return nodes[patch(run)];
  }
}
