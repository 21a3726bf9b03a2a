package plyscape.machine;

/**
 * One motion to an end point, in panel coordinates: X and Y in mm, depth in mm positive down (so a
 * height over the panel is negative). Where it starts is where the move before it ended. Immutable.
 *
 * @param kind what kind of motion
 * @param x end X
 * @param y end Y
 * @param depth end depth, positive down
 * @param centreX arc centre X (absolute), only for arcs
 * @param centreY arc centre Y (absolute), only for arcs
 * @param feedMmPerMin feed, 0 for rapids
 */
public record Move(
    Kind kind,
    double x,
    double y,
    double depth,
    double centreX,
    double centreY,
    double feedMmPerMin) {

  /**
   * Kinds of motion; arcs are in the XY plane, seen from above, and may change depth evenly along
   * the way.
   */
  public enum Kind {
    RAPID,
    LINE,
    CLOCKWISE,
    COUNTERCLOCKWISE
  }

  /** A rapid. */
  public static Move rapid(double x, double y, double depth) {
    return new Move(Kind.RAPID, x, y, depth, 0, 0, 0);
  }

  /** A straight cut. */
  public static Move line(double x, double y, double depth, double feedMmPerMin) {
    return new Move(Kind.LINE, x, y, depth, 0, 0, feedMmPerMin);
  }

  /** An arc about an absolute centre. */
  public static Move arc(
      boolean clockwise,
      double x,
      double y,
      double depth,
      double centreX,
      double centreY,
      double feedMmPerMin) {
    return new Move(
        clockwise ? Kind.CLOCKWISE : Kind.COUNTERCLOCKWISE,
        x,
        y,
        depth,
        centreX,
        centreY,
        feedMmPerMin);
  }

  /** Whether this is an arc. */
  public boolean isArc() {
    return kind == Kind.CLOCKWISE || kind == Kind.COUNTERCLOCKWISE;
  }
}
