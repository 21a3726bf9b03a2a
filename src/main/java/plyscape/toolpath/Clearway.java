package plyscape.toolpath;

/**
 * Says where a cutter's centre may go at one depth: not nearer to a wall of the level's pocket than the radius, read off
 * the lattice with a margin for interpolation; and where wood still stands in its way.
 */
final class Clearway {

  /** Rapids keep this far off the walls and off standing wood, mm, so that rounding can't make them touch. */
  static final double RAPID_MARGIN_MM = 0.05;

  private static final int DIRECTIONS = 16;
  private static final double[] DISTANCES = {0.15, 0.3, 0.5, 0.75, 1.0, 1.4, 2.0};

  private final DistanceField field;
  private final Stock stock;
  private final double radius;
  private final double depth;

  Clearway(DistanceField field, Stock stock, double radiusMm, double depthMm) {
    this.field = field;
    this.stock = stock;
    this.radius = radiusMm;
    this.depth = depthMm;
  }

  /** Whether the centre may move straight from A to B; both ends are taken to be allowed places. */
  boolean free(double ax, double ay, double bx, double by) {
    double length = Math.hypot(bx - ax, by - ay);
    int steps = (int) Math.ceil(length / (0.7 * field.lattice.stepMm()));
    for (int s = 1; s < steps; s++) {
      double t = (double) s / steps;
      double toEnd = Math.min(t, 1 - t) * length;
      double need = radius - 0.002 + Math.min(0.01, 0.08 * toEnd);
      if (field.at(ax + t * (bx - ax), ay + t * (by - ay)) < need) {
        return false;
      }
    }
    return true;
  }

  /** Distance of a place from the wall beyond the radius, mm. */
  double room(double x, double y) {
    return field.at(x, y) - radius;
  }

  /** Whether the disk at a place is over ground cut to the depth, with the margin for rapids. */
  boolean clear(double x, double y) {
    return room(x, y) >= RAPID_MARGIN_MM
        && stock.highest(x, y, x, y, radius + RAPID_MARGIN_MM) >= depth - Stock.SAME_MM;
  }

  /** A place near one on a path where a rapid may come down to the depth, or null; the way between them is free. */
  double[] clearSpot(double x, double y) {
    if (clear(x, y)) {
      return new double[] {x, y};
    }
    for (double distance : DISTANCES) {
      if (distance > Math.max(0.5, radius)) {
        break;
      }
      for (int a = 0; a < DIRECTIONS; a++) {
        double angle = 2 * Math.PI * a / DIRECTIONS;
        double sx = x + distance * Math.cos(angle);
        double sy = y + distance * Math.sin(angle);
        if (clear(sx, sy) && free(x, y, sx, sy)) {
          return new double[] {sx, sy};
        }
      }
    }
    return null;
  }
}
