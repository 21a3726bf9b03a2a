package plyscape.simulate.stroke;

/**
 * One motion of one cutter over the panel: gives the depth to which it takes each point, in closed
 * form. Lengths in mm, depth positive down.
 */
public abstract sealed class Stroke permits LineStroke, ArcStroke {

  final double x0;
  final double y0;
  final double z0;
  final double x1;
  final double y1;
  final double z1;
  private final Ends ends;
  private final Origin origin;

  Stroke(Ends ends, Origin origin) {
    this.ends = ends;
    this.origin = origin;
    x0 = ends.x0;
    y0 = ends.y0;
    z0 = ends.z0;
    x1 = ends.x1;
    y1 = ends.y1;
    z1 = ends.z1;
  }

  /** Start and end. */
  public record Ends(double x0, double y0, double z0, double x1, double y1, double z1) {}

  /**
   * What the program says of it.
   *
   * @param line its line
   * @param mustNotCut whether it must not touch stock: a rapid, or the spindle stands still
   * @param spindleOn whether the spindle turns
   */
  public record Origin(int line, boolean mustNotCut, boolean spindleOn) {}

  /** Start and end. */
  public final Ends ends() {
    return ends;
  }

  /** Its line in the program. */
  public final int line() {
    return origin.line;
  }

  /** Whether it must not touch stock. */
  public final boolean mustNotCut() {
    return origin.mustNotCut;
  }

  /** Whether the spindle turns. */
  public final boolean spindleOn() {
    return origin.spindleOn;
  }

  /** Deepest tip. */
  public final double deepestTip() {
    return Math.max(z0, z1);
  }

  /** Whether it only goes up, out of what it stands in. */
  public final boolean straightUp() {
    return z1 < z0 && x0 == x1 && y0 == y1;
  }

  /** Length of the centre line seen from above. */
  public abstract double length();

  /** Least X of the centre line. */
  public abstract double minX();

  /** Greatest X of the centre line. */
  public abstract double maxX();

  /** Least Y of the centre line. */
  public abstract double minY();

  /** Greatest Y of the centre line. */
  public abstract double maxY();

  /** Depth to which a tool cuts a point, minus infinity where it doesn't come. */
  public abstract double deepest(ToolForm tool, double px, double py);

  /** How far along (0 to 1) the centre line comes nearest to a point. */
  public abstract double nearest(double px, double py);

  /** Point of the centre line at a fraction of the way: x, y, depth. */
  public abstract double[] point(double t);

  /**
   * Intervals of x in which points at height py lie within r of the centre line, as pairs in {@code
   * out}; gives how many pairs. They may overlap, and have no points outside.
   */
  public abstract int spans(double py, double r, double[] out);
}
