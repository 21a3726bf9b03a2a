package plyscape.standing;

import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Whether a fin runs along the grain, by the least rectangle around it. */
final class GrainRun {

  /** Parts less elongated than this are posts, which have no direction. */
  private static final double ELONGATED = 2;

  /** Directions nearer to the grain than this count as along it, degrees. */
  private static final double NEAR_DEGREES = 30;

  private GrainRun() {}

  /**
   * Whether a part is a fin along the grain.
   *
   * @param grainDegrees from X; NaN where it isn't known, and then no fin is
   */
  static boolean along(Polygon part, double grainDegrees) {
    Geometry rectangle = MinimumAreaRectangle.getMinimumRectangle(part);
    Coordinate[] corners = rectangle.getCoordinates();
    if (Double.isNaN(grainDegrees) || corners.length < 5) {
      return false;
    }
    double a = corners[0].distance(corners[1]);
    double b = corners[1].distance(corners[2]);
    if (Math.max(a, b) < ELONGATED * Math.min(a, b)) {
      return false;
    }
    Coordinate from = a >= b ? corners[0] : corners[1];
    Coordinate to = a >= b ? corners[1] : corners[2];
    double run = Math.toDegrees(Math.atan2(to.y - from.y, to.x - from.x));
    double off = Math.abs(((run - grainDegrees) % 180 + 180) % 180);
    return Math.min(off, 180 - off) <= NEAR_DEGREES;
  }
}
