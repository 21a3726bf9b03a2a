package plyscape.simulate;

import java.util.List;
import plyscape.grid.Box;

/**
 * The outlines of all targets as walls between two depths, with exact distances from a point to
 * them.
 *
 * <p>An edge that two targets share is one wall between their depths; an edge of one alone is a
 * wall up to the uncut face.
 */
final class Walls {

  private final double[] x0;
  private final double[] y0;
  private final double[] x1;
  private final double[] y1;
  private final double[] shallow;
  private final double[] deep;
  private final int count;
  private final WallBuckets buckets;

  /** Of targets on a panel. */
  Walls(Box panel, List<Target> targets) {
    EdgeTable table = new EdgeTable(targets);
    x0 = table.x0;
    y0 = table.y0;
    x1 = table.x1;
    y1 = table.y1;
    shallow = table.shallow;
    deep = table.deep;
    count = table.count;
    buckets = new WallBuckets(table, panel);
  }

  /** Whether an edge of some target at least this deep is within a distance of the point. */
  boolean deeperWithin(double px, double py, double distance, double depth) {
    return distanceTo(px, py, distance, depth, Double.POSITIVE_INFINITY) <= distance;
  }

  /**
   * Distance of a point to the nearest wall of the pocket in which all targets are at least {@code
   * level} deep, or {@code cap} when there is none nearer.
   */
  double wallDistance(double px, double py, double cap, double level) {
    return distanceTo(px, py, cap, level, level);
  }

  /**
   * Distance to the nearest edge with {@code deep >= atLeast} and {@code shallow < below}, or cap
   * (a little more) when none is as near.
   */
  double distanceTo(double px, double py, double cap, double atLeast, double below) {
    double best = cap * cap;
    boolean found = false;
    int toColumn = buckets.column(px + cap);
    int toRow = buckets.row(py + cap);
    for (int r = buckets.row(py - cap); r <= toRow; r++) {
      for (int c = buckets.column(px - cap); c <= toColumn; c++) {
        int bucket = r * buckets.columns + c;
        for (int k = buckets.start[bucket]; k < buckets.start[bucket + 1]; k++) {
          int e = buckets.edges[k];
          if (deep[e] >= atLeast && shallow[e] < below) {
            double d = squaredDistance(e, px, py);
            if (d <= best) {
              best = d;
              found = true;
            }
          }
        }
      }
    }
    return found ? Math.sqrt(best) : Math.nextUp(cap);
  }

  /**
   * Distance to the nearest edge of anything at least this deep, however far; infinite when nothing
   * is.
   */
  double distanceToDepth(double px, double py, double depth) {
    double best = Double.POSITIVE_INFINITY;
    for (int e = 0; e < count; e++) {
      if (deep[e] >= depth) {
        best = Math.min(best, squaredDistance(e, px, py));
      }
    }
    return Math.sqrt(best);
  }

  private double squaredDistance(int e, double px, double py) {
    double dx = x1[e] - x0[e];
    double dy = y1[e] - y0[e];
    double wx = px - x0[e];
    double wy = py - y0[e];
    double t = (wx * dx + wy * dy) / (dx * dx + dy * dy);
    t = t < 0 ? 0 : t > 1 ? 1 : t;
    wx -= t * dx;
    wy -= t * dy;
    return wx * wx + wy * wy;
  }
}
