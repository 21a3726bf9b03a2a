package plyscape.machine;

/**
 * Radius, angles and length of an arc move, seen from above. Immutable.
 *
 * @param radius distance of the start from the centre, mm
 * @param startAngle of the start about the centre, radians
 * @param sweep angle turned, radians, positive counterclockwise; a full turn when the end is the
 *     start
 * @param length of the path in space, mm, the change of depth counted
 */
public record ArcGeometry(double radius, double startAngle, double sweep, double length) {

  /** Of a move that starts at a point. */
  public static ArcGeometry of(double startX, double startY, double startDepth, Move move) {
    double ax = startX - move.centreX();
    double ay = startY - move.centreY();
    double bx = move.x() - move.centreX();
    double by = move.y() - move.centreY();
    double radius = Math.hypot(ax, ay);
    double turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    if (startX == move.x() && startY == move.y()) {
      turn = 0; // rounding may leave a trace of an angle, which would turn a full circle into none
    }
    double sweep;
    if (move.kind() == Move.Kind.CLOCKWISE) {
      sweep = turn >= 0 ? turn - 2 * Math.PI : turn;
    } else {
      sweep = turn <= 0 ? turn + 2 * Math.PI : turn;
    }
    double length = Math.hypot(radius * sweep, move.depth() - startDepth);
    return new ArcGeometry(radius, Math.atan2(ay, ax), sweep, length);
  }
}
