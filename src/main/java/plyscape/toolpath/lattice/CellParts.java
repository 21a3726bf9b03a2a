package plyscape.toolpath.lattice;

import java.util.Arrays;

/**
 * How deep the parts of nodes' cells are surely cut where the edge of a cut goes through the cell:
 * 4 x 4 parts a cell, so that slivers of a quarter of a lattice step are seen. A part counts as cut
 * when all of it is. Cells that are cut to one depth everywhere need none. Memory grows with the
 * length of edges, not with the area: 64 bytes a cell.
 */
final class CellParts {

  private static final int SIDE = 4;
  private static final int COUNT = SIDE * SIDE;

  private final Lattice lattice;

  /** From a part's centre to its corners, mm. */
  private final double reachMm;

  private final double partMm;

  /** Where the parts of each node begin, in units of {@link #COUNT}; 0 for none. */
  private final int[] blocks;

  private float[] depths;
  private int used = 1;
  private int[] free = new int[64];
  private int freed;

  CellParts(Lattice lattice) {
    this(lattice, new int[lattice.size()], new float[64 * COUNT]);
  }

  private CellParts(Lattice lattice, int[] blocks, float[] depths) {
    this.lattice = lattice;
    this.blocks = blocks;
    this.depths = depths;
    partMm = lattice.stepMm() / SIDE;
    reachMm = partMm * Math.sqrt(0.5);
  }

  CellParts copy() {
    CellParts copy = new CellParts(lattice, blocks.clone(), depths.clone());
    copy.used = used;
    copy.free = free.clone();
    copy.freed = freed;
    return copy;
  }

  /** How far from a node the way of a disk may lie that covers a part of its cell, mm. */
  double farthest(double radius) {
    return radius - reachMm + (SIDE - 1) * reachMm;
  }

  /** Takes in that a node's whole cell has been cut to a depth. */
  void cutWhole(int node, float target) {
    int block = blocks[node];
    if (block == 0) {
      return;
    }
    boolean deeper = false;
    for (int part = block * COUNT; part < (block + 1) * COUNT; part++) {
      deeper |= depths[part] > target;
      depths[part] = depths[part] < target ? target : depths[part];
    }
    if (!deeper) {
      drop(node);
    }
  }

  private void drop(int node) {
    int block = blocks[node];
    if (block == 0) {
      return;
    }
    blocks[node] = 0;
    if (freed == free.length) {
      free = Arrays.copyOf(free, 2 * freed);
    }
    free[freed++] = block;
  }

  private int take(int node, float depth) {
    int block = freed > 0 ? free[--freed] : used++;
    if ((block + 1) * COUNT > depths.length) {
      depths = Arrays.copyOf(depths, 2 * depths.length);
    }
    Arrays.fill(depths, block * COUNT, (block + 1) * COUNT, depth);
    blocks[node] = block;
    return block;
  }

  /**
   * Cuts the parts that the disk covers on its way.
   *
   * @param whole depth to which the whole cell is cut now
   * @return depth to which it is cut then
   */
  float cut(int node, float whole, Way way, double radius, float target) {
    double least = radius - reachMm;
    double squared = least * least;
    int block = blocks[node];
    float highest = Float.POSITIVE_INFINITY;
    float deepest = whole;
    double x = left(node);
    double y = bottom(node);
    for (int part = 0; part < COUNT; part++) {
      float now = block == 0 ? whole : depths[block * COUNT + part];
      if (now < target
          && way.squaredTo(x + part % SIDE * partMm, y + part / SIDE * partMm) <= squared) {
        block = block == 0 ? take(node, whole) : block;
        now = target;
        depths[block * COUNT + part] = target;
      }
      highest = now < highest ? now : highest;
      deepest = now > deepest ? now : deepest;
    }
    if (highest == deepest) {
      drop(node);
    }
    return highest;
  }

  /**
   * Depth of the highest part that the disk touches on its way, if that is higher than a depth.
   *
   * @param whole depth to which the whole cell is cut
   * @return the depth given if no part touched is higher
   */
  double highest(int node, float whole, Way way, double radius, double least) {
    double most = radius + reachMm;
    double squared = most * most;
    int block = blocks[node];
    double highest = least;
    double x = left(node);
    double y = bottom(node);
    for (int part = 0; part < COUNT; part++) {
      float now = block == 0 ? whole : depths[block * COUNT + part];
      if (now < highest
          && way.squaredTo(x + part % SIDE * partMm, y + part / SIDE * partMm) <= squared) {
        highest = now;
      }
    }
    return highest;
  }

  private double left(int node) {
    return lattice.x(node % lattice.columns()) - 1.5 * partMm;
  }

  private double bottom(int node) {
    return lattice.y(node / lattice.columns()) - 1.5 * partMm;
  }
}
