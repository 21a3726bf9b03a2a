package plyscape.simulate;

/**
 * One motion of one cutter over the panel: gives the depth to which it takes each point, in closed
 * form. Lengths in mm, depth positive down.
 */
abstract sealed class Stroke permits LineStroke, ArcStroke {

  /** Its line in the program. */
  final int line;

  final double x0;
  final double y0;
  final double z0;
  final double x1;
  final double y1;
  final double z1;

  /** Whether it must not touch stock: a rapid, or the spindle stands still. */
  final boolean mustNotCut;

  final boolean spindleOn;

  Stroke(Ends ends, int line, boolean mustNotCut, boolean spindleOn) {
    this.x0 = ends.x0;
    this.y0 = ends.y0;
    this.z0 = ends.z0;
    this.x1 = ends.x1;
    this.y1 = ends.y1;
    this.z1 = ends.z1;
    this.line = line;
    this.mustNotCut = mustNotCut;
    this.spindleOn = spindleOn;
  }

  /** Start and end. */
  record Ends(double x0, double y0, double z0, double x1, double y1, double z1) {}

  /** Deepest tip. */
  final double deepestTip() {
    return Math.max(z0, z1);
  }

  /** Whether it only goes up, out of what it stands in. */
  final boolean straightUp() {
    return z1 < z0 && x0 == x1 && y0 == y1;
  }

  /** Length of the centre line seen from above. */
  abstract double length();

  /** Bounds of the centre line. */
  abstract double minX();

  abstract double maxX();

  abstract double minY();

  abstract double maxY();

  /** Depth to which a tool cuts a point, minus infinity where it doesn't come. */
  abstract double deepest(ToolForm tool, double px, double py);

  /** How far along (0 to 1) the centre line comes nearest to a point. */
  abstract double nearest(double px, double py);

  /** Point of the centre line at a fraction of the way: x, y, depth. */
  abstract double[] point(double t);

  /**
   * Intervals of x in which points at height py lie within r of the centre line, as pairs in {@code
   * out}; gives how many pairs. They may overlap, and have no points outside.
   */
  abstract int spans(double py, double r, double[] out);
}
