package plyscape.planar;

/**
 * A line between two nodes of a planar map, or a closed line through no node: grid points in order,
 * and what lies to its left and right. Two chains meet only in their ends.
 */
public final class Chain {

  /** Grid points in order; not to be changed. */
  public final int[] x;

  /** As many. */
  public final int[] y;

  /** Traced from the terrain or along the box: it has been simplified as far as it may be. */
  public final boolean terrain;

  int left;
  int right;

  /** Takes points as they are, and the faces on either side. */
  public Chain(int[] x, int[] y, boolean terrain, int left, int right) {
    this.x = x;
    this.y = y;
    this.terrain = terrain;
    this.left = left;
    this.right = right;
  }

  /** Face or region to the left of the line's direction. */
  public int left() {
    return left;
  }

  /** Face or region to the right of the line's direction. */
  public int right() {
    return right;
  }

  /** Index of the last point. */
  public int last() {
    return x.length - 1;
  }

  /** Twice the area swept about the origin; summed over a boundary, twice the area inside. */
  public long cross2() {
    long sum = 0;
    for (int i = 0; i < x.length - 1; i++) {
      sum += GridUnits.cross(x[i], y[i], x[i + 1], y[i + 1]);
    }
    return sum;
  }

  /** Length, grid units. */
  public double length() {
    double sum = 0;
    for (int i = 0; i < x.length - 1; i++) {
      sum += Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
    }
    return sum;
  }
}
