package plyscape.toolpath.cover;

import java.util.Arrays;
import java.util.function.IntPredicate;
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

  /**
   * The patches of nodes that are sought.
   *
   * @param where blocks outside which none is
   */
  Patches(Lattice lattice, IntPredicate sought, CoarseMap where) {
    columns = lattice.columns();
    int below = 0;
    for (int j = 0; j < lattice.rows(); j++) {
      int from = count;
      where.eachRun(j, (begin, last) -> add(sought, begin, last));
      join(below, from);
      below = from;
    }
    nodes = new int[count];
    for (int run = 0; run < count; run++) {
      nodes[patch(run)] += end[run] - first[run];
    }
  }

  /** Adds the runs of sought nodes among neighbours in a row. */
  private void add(IntPredicate sought, int from, int last) {
    int start = -1;
    for (int node = from; node <= last; node++) {
      if (sought.test(node) != start >= 0) {
        start = turn(start, node);
      }
    }
    if (start >= 0) {
      add(start, last + 1);
    }
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
