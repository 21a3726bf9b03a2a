package plyscape.toolpath.motion;

import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Stock;

/**
 * Says where a cutter's centre may go at one depth: not nearer to a wall of the level's pocket than
 * the radius, read off the lattice with a margin for interpolation; and where wood still stands in
 * its way.
 */
final class Clearway {

  /**
   * Rapids keep at least this far off the walls and off standing wood, mm, so that rounding can't
   * make them touch.
   */
  private static final double RAPID_MARGIN_MM = 0.05;

  /** Off its ends a way at depth keeps this much farther from walls than the radius, mm. */
  private static final double WALL_MARGIN_MM = 0.01;

  /** A corner in a way longer than this is gone round by lifting, mm. */
  private static final double ROUND_MM = 3;

  /** How far aside of its middle a way is laid, in shares of its length. */
  private static final double[] ASIDE = {0.1, 0.2, 0.35, 0.5};

  private static final int DIRECTIONS = 16;
  private static final double[] DISTANCES = {
    0.15, 0.3, 0.5, 0.75, 1, 1.4, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8
  };

  /** A cut level into wood is sooner than a ramp from this far off, in radii. */
  private static final double FAR_RADII = 2.5;

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
      double need = radius - 0.002 + Math.min(WALL_MARGIN_MM, 0.08 * toEnd);
      if (field.at(ax + t * (bx - ax), ay + t * (by - ay)) < need) {
        return false;
      }
    }
    return true;
  }

  /**
   * The way from A to B, both of them allowed places: straight, or a little aside where a corner of
   * the wall is in the way.
   *
   * @return its points, A and B among them; null if neither is free
   */
  double[][] round(double ax, double ay, double bx, double by) {
    double[][] straight = {{ax, ay}, {bx, by}};
    if (free(ax, ay, bx, by)) {
      return straight;
    }
    double length = Math.hypot(bx - ax, by - ay);
    for (double aside : length > ROUND_MM ? new double[0] : ASIDE) {
      for (double out : new double[] {aside, -aside}) {
        double x = (ax + bx) / 2 - out * (by - ay);
        double y = (ay + by) / 2 + out * (bx - ax);
        if (room(x, y) >= WALL_MARGIN_MM && free(ax, ay, x, y) && free(x, y, bx, by)) {
          return new double[][] {straight[0], {x, y}, straight[1]};
        }
      }
    }
    return null;
  }

  /** Points along a biarc from a place, about a lattice step apart. */
  double[][] along(Biarc biarc, double fromX, double fromY) {
    return biarc.points(fromX, fromY, 0.8 * field.lattice.stepMm());
  }

  /** Whether the centre may move along points. */
  boolean free(double[][] points) {
    double total = 0;
    for (int i = 1; i < points.length; i++) {
      total += Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
    }
    double so = 0;
    for (int i = 1; i < points.length - 1; i++) {
      so += Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
      double need = radius - 0.002 + Math.min(WALL_MARGIN_MM, 0.08 * Math.min(so, total - so));
      if (field.at(points[i][0], points[i][1]) < need) {
        return false;
      }
    }
    return true;
  }

  /** Whether the lattice node nearest to a place lies in the pocket, off its walls a little. */
  boolean inside(double x, double y) {
    return field.distance[field.lattice.nearest(x, y)] > Stock.RIM_MM / 2;
  }

  /** Distance of a place from the wall beyond the radius, mm. */
  double room(double x, double y) {
    return field.at(x, y) - radius;
  }

  /** Whether the disk at a place is over ground cut to the depth, with the margin for rapids. */
  boolean clear(double x, double y) {
    return clear(x, y, depth);
  }

  /** Whether it is over ground cut to a depth, no deeper than this one's. */
  boolean clear(double x, double y, double toDepth) {
    double least = toDepth - Stock.SAME_MM;
    return room(x, y) >= RAPID_MARGIN_MM
        && stock.sureAt(x, y) >= least // most places fall at this
        && stock.highest(x, y, x, y, radius) >= least;
  }

  /** Depth of the highest wood that a rapid straight from A to B must clear, mm. */
  double highest(double ax, double ay, double bx, double by) {
    return stock.highest(ax, ay, bx, by, radius + 0.01);
  }

  /**
   * A place near one on a path where a rapid may come down to the depth, or null; the way between
   * them is free.
   */
  double[] clearSpot(double x, double y) {
    return clearSpot(x, y, depth);
  }

  /** The same for a rapid that comes down to a depth no deeper than this one's. */
  double[] clearSpot(double x, double y, double toDepth) {
    return spot(x, y, nearMm(), (sx, sy) -> clear(sx, sy, toDepth));
  }

  /** The same as far off as a ramp into the wood would be longer than the way from there. */
  double[] farClearSpot(double x, double y) {
    return spot(x, y, FAR_RADII * radius, this::clear);
  }

  /**
   * A place near one on a path where the cutter doesn't touch a wall, or null; the way between them
   * is free.
   */
  double[] roomySpot(double x, double y) {
    return spot(x, y, nearMm(), (sx, sy) -> room(sx, sy) >= RAPID_MARGIN_MM);
  }

  /** Depth of the highest wood of the pocket along a line, mm; walls apart. */
  double highestInside(double ax, double ay, double bx, double by) {
    return stock.highestInside(field.distance, ax, ay, bx, by, radius);
  }

  private double nearMm() {
    return Math.max(0.5, radius);
  }

  private interface Test {
    boolean good(double x, double y);
  }

  private double[] spot(double x, double y, double mostMm, Test test) {
    if (test.good(x, y)) {
      return new double[] {x, y};
    }
    for (double distance : DISTANCES) {
      if (distance > mostMm) {
        break;
      }
      for (int a = 0; a < DIRECTIONS; a++) {
        double angle = 2 * Math.PI * a / DIRECTIONS;
        double sx = x + distance * Math.cos(angle);
        double sy = y + distance * Math.sin(angle);
        if (test.good(sx, sy) && free(x, y, sx, sy)) {
          return new double[] {sx, sy};
        }
      }
    }
    return null;
  }
}
