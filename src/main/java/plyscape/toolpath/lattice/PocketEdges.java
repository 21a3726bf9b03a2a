package plyscape.toolpath.lattice;

import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/**
 * The walls of a pocket as plain edges from (ax, ay) to (bx, by), panel mm, with exact distances to
 * them.
 */
public final class PocketEdges {

  final int count;
  public final double[] ax;
  public final double[] ay;
  public final double[] bx;
  public final double[] by;
  private final double[] dx;
  private final double[] dy;
  private final double[] squaredLength;

  /** Takes every edge of every ring; edges of no length are left out. */
  public PocketEdges(MultiPolygon pocket) {
    int most = pocket.getNumPoints();
    ax = new double[most];
    ay = new double[most];
    bx = new double[most];
    by = new double[most];
    dx = new double[most];
    dy = new double[most];
    squaredLength = new double[most];
    int n = 0;
    for (int g = 0; g < pocket.getNumGeometries(); g++) {
      Polygon polygon = (Polygon) pocket.getGeometryN(g);
      for (int r = -1; r < polygon.getNumInteriorRing(); r++) {
        LinearRing ring = r < 0 ? polygon.getExteriorRing() : polygon.getInteriorRingN(r);
        CoordinateSequence points = ring.getCoordinateSequence();
        for (int i = 1; i < points.size(); i++) {
          ax[n] = points.getX(i - 1);
          ay[n] = points.getY(i - 1);
          bx[n] = points.getX(i);
          by[n] = points.getY(i);
          if (ax[n] != bx[n] || ay[n] != by[n]) {
            dx[n] = bx[n] - ax[n];
            dy[n] = by[n] - ay[n];
            squaredLength[n] = dx[n] * dx[n] + dy[n] * dy[n];
            n++;
          }
        }
      }
    }
    count = n;
  }

  /** Squared distance of a point from an edge, mm2. */
  public double squaredDistance(int edge, double x, double y) {
    double t = along(edge, x, y);
    double ex = ax[edge] + t * dx[edge] - x;
    double ey = ay[edge] + t * dy[edge] - y;
    return ex * ex + ey * ey;
  }

  /** Where on an edge the point nearest to (x, y) lies, 0 at its start to 1 at its end. */
  public double along(int edge, double x, double y) {
    double t = ((x - ax[edge]) * dx[edge] + (y - ay[edge]) * dy[edge]) / squaredLength[edge];
    return t < 0 ? 0 : t < 1 ? t : 1;
  }

  /**
   * An edge no farther from a point than the given one, found by going along the walls as long as
   * that leads nearer: of a curve of many short edges, the one that faces the point.
   */
  public int nearestAlong(int edge, double x, double y) {
    int nearest = edge;
    double best = squaredDistance(edge, x, y);
    for (int way = -1; way <= 1; way += 2) {
      for (int e = nearest + way; e >= 0 && e < count; e += way) {
        double d = squaredDistance(e, x, y);
        if (d >= best) {
          break;
        }
        best = d;
        nearest = e;
      }
    }
    return nearest;
  }
}
