package plyscape.toolpath.lattice;

import java.util.Arrays;

/**
 * Least and greatest value of a field in each block of nodes, those right of it and above it that
 * touch it included: what is sought at a value is sought only where it may be.
 */
public final class BlockRange {

  /** Nodes on a side of a block. */
  public static final int BLOCK = 16;

  private final Lattice lattice;
  private final int across;
  private final int up;
  private final float[] least;
  private final float[] greatest;

  BlockRange(Lattice lattice, float[] field) {
    this.lattice = lattice;
    across = (lattice.columns() + BLOCK - 1) / BLOCK;
    up = (lattice.rows() + BLOCK - 1) / BLOCK;
    least = new float[across * up];
    greatest = new float[across * up];
    Arrays.fill(least, Float.POSITIVE_INFINITY);
    Arrays.fill(greatest, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < lattice.rows(); j++) {
      int blocks = j / BLOCK * across;
      row(field, j * lattice.columns(), blocks);
      if (j % BLOCK == 0 && j > 0) {
        row(field, j * lattice.columns(), blocks - across);
      }
    }
  }

  private void row(float[] field, int base, int blocks) {
    for (int a = 0; a < across; a++) {
      int end = Math.min(lattice.columns(), (a + 1) * BLOCK + 1);
      float low = least[blocks + a];
      float high = greatest[blocks + a];
      for (int node = base + a * BLOCK; node < base + end; node++) {
        float value = field[node];
        low = value < low ? value : low;
        high = value > high ? value : high;
      }
      least[blocks + a] = low;
      greatest[blocks + a] = high;
    }
  }

  /** Blocks in a row of them. */
  public int across() {
    return across;
  }

  /** Rows of blocks. */
  public int up() {
    return up;
  }

  /**
   * First and last column, first and last row of the blocks that hold a value over one; null when
   * none does.
   */
  public int[] boxOver(double value) {
    int[] box = {Integer.MAX_VALUE, -1, Integer.MAX_VALUE, -1};
    for (int b = 0; b < greatest.length; b++) {
      if (greatest[b] > value) {
        box[0] = Math.min(box[0], b % across);
        box[1] = Math.max(box[1], b % across);
        box[2] = Math.min(box[2], b / across);
        box[3] = Math.max(box[3], b / across);
      }
    }
    return box[1] < 0
        ? null
        : new int[] {
          box[0] * BLOCK,
          Math.min(lattice.columns(), (box[1] + 1) * BLOCK) - 1,
          box[2] * BLOCK,
          Math.min(lattice.rows(), (box[3] + 1) * BLOCK) - 1
        };
  }

  /** The blocks that may hold, or lie between nodes that hold, a value between two. */
  public CoarseMap between(double low, double high) {
    boolean[] near = new boolean[across * up];
    for (int b = 0; b < near.length; b++) {
      near[b] = least[b] < high && greatest[b] > low;
    }
    return new CoarseMap(lattice, BLOCK, near);
  }
}
