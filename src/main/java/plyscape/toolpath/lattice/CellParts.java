package plyscape.toolpath.lattice;

import java.util.Arrays;

/**
 * How deep the parts of nodes' cells are surely cut where the edge of a cut goes through the cell.
 * A part counts as cut when all of it is. Each cell has a list of its depths with the parts that
 * are cut to each; cells that are cut to one depth everywhere need none. Memory grows with the
 * length of edges, not with the area: 16 bytes for each depth in a cell.
 */
final class CellParts {

  /** The first depth in the list of each node; 0 for none. */
  private final int[] heads;

  private float[] depths;

  /** The parts cut to each depth, as {@link CellCover} gives them. */
  private long[] parts;

  private int[] next;
  private int used;
  private int free;

  CellParts(int nodes) {
    this(new int[nodes], new float[64], new long[64], new int[64]);
    used = 1;
  }

  private CellParts(int[] heads, float[] depths, long[] parts, int[] next) {
    this.heads = heads;
    this.depths = depths;
    this.parts = parts;
    this.next = next;
  }

  CellParts copy() {
    CellParts copy = new CellParts(heads.clone(), depths.clone(), parts.clone(), next.clone());
    copy.used = used;
    copy.free = free;
    return copy;
  }

  /**
   * Cuts parts of a node's cell.
   *
   * @param whole depth to which the whole cell is cut now
   * @return depth to which it is cut then
   */
  float cut(int node, float whole, long covered, float target) {
    if (covered == 0) {
      return whole;
    }
    if (heads[node] == 0) {
      if (covered == CellCover.ALL) {
        return target;
      }
      add(node, whole, CellCover.ALL & ~covered);
      add(node, target, covered);
      return whole;
    }
    lower(node, covered, target);
    int head = heads[node];
    float highest = depths[head];
    if (next[head] == 0) {
      heads[node] = 0;
      drop(head);
      return highest;
    }
    for (int k = next[head]; k != 0; k = next[k]) {
      highest = depths[k] < highest ? depths[k] : highest;
    }
    return highest;
  }

  /** Moves those of the parts covered that stand higher to the entry of the depth. */
  private void lower(int node, long covered, float target) {
    long moved = 0;
    int same = 0;
    int before = 0;
    int k = heads[node];
    while (k != 0) {
      int after = next[k];
      if (depths[k] < target) {
        moved |= parts[k] & covered;
        parts[k] &= ~covered;
      } else if (depths[k] == target) {
        same = k;
      }
      if (parts[k] != 0) {
        before = k;
      } else if (before == 0) {
        heads[node] = after;
        drop(k);
      } else {
        next[before] = after;
        drop(k);
      }
      k = after;
    }
    if (same != 0) {
      parts[same] |= moved;
    } else if (moved != 0) {
      add(node, target, moved);
    }
  }

  private void add(int node, float depth, long covered) {
    int k = free;
    if (k != 0) {
      free = next[k];
    } else {
      k = used++;
      if (k == depths.length) {
        depths = Arrays.copyOf(depths, 2 * k);
        parts = Arrays.copyOf(parts, 2 * k);
        next = Arrays.copyOf(next, 2 * k);
      }
    }
    depths[k] = depth;
    parts[k] = covered;
    next[k] = heads[node];
    heads[node] = k;
  }

  private void drop(int k) {
    next[k] = free;
    free = k;
  }

  /**
   * Depth of the highest of some parts of a node's cell, if that is higher than a depth.
   *
   * @param whole depth to which the whole cell is cut
   * @return the depth given if none of the parts is higher
   */
  double highest(int node, float whole, long touched, double least) {
    if (touched == 0) {
      return least;
    }
    int k = heads[node];
    if (k == 0) {
      return whole < least ? whole : least;
    }
    double highest = least;
    for (; k != 0; k = next[k]) {
      if (depths[k] < highest && (parts[k] & touched) != 0) {
        highest = depths[k];
      }
    }
    return highest;
  }
}
