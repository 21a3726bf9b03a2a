package plyscape.toolpath.ring;

import java.util.Arrays;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Ring;

/**
 * Puts the contour at one cutter radius exactly onto the offset of the walls. A contour of the
 * lattice strays from the true offset by about h2/8r on a curve and cuts off its corners; here
 * every point is moved along the line from its nearest wall point, and where two walls meet the
 * corner is put back, as the meeting of the two tangents.
 *
 * <p>Afterwards no point is nearer to a wall than the radius less 0.001 mm, and between
 * neighbouring points the line comes nearer by at most a thousandth or two (the height of a chord
 * of one lattice step).
 */
final class WallRing {

  /** Kinks flatter than this need no corner: cutting it off leaves under a hundredth of a step. */
  private static final double KINK_COSINE = Math.cos(Math.toRadians(6));

  private final DistanceField field;
  private final double radius;
  private final int[] candidates = new int[16];
  private int candidateCount;
  private double wallX;
  private double wallY;

  /** For one pocket and one cutter radius, mm. */
  WallRing(DistanceField field, double radiusMm) {
    this.field = field;
    this.radius = radiusMm;
  }

  /** The ring made exact. */
  Ring exact(Ring ring) {
    int n = ring.size();
    double[] x = new double[2 * n + 2];
    double[] y = new double[2 * n + 2];
    double[] normalX = new double[n];
    double[] normalY = new double[n];
    double[] px = ring.x().clone();
    double[] py = ring.y().clone();
    for (int i = 0; i < n; i++) {
      place(px, py, i);
      double length = Math.max(1e-9, Math.hypot(px[i] - wallX, py[i] - wallY));
      normalX[i] = (px[i] - wallX) / length;
      normalY[i] = (py[i] - wallY) / length;
    }
    int m = 0;
    for (int i = 0; i < n; i++) {
      x[m] = px[i];
      y[m++] = py[i];
      int j = i + 1 < n ? i + 1 : 0;
      if (i + 1 == n && !ring.closed()) {
        break;
      }
      double cosine = normalX[i] * normalX[j] + normalY[i] * normalY[j];
      if (cosine < KINK_COSINE) {
        double[] corner =
            corner(
                new double[] {px[i], py[i], normalX[i], normalY[i]},
                new double[] {px[j], py[j], normalX[j], normalY[j]});
        if (corner != null) {
          x[m] = corner[0];
          y[m++] = corner[1];
        }
      }
    }
    return new Ring(ring.index(), ring.closed(), Arrays.copyOf(x, m), Arrays.copyOf(y, m));
  }

  private void place(double[] px, double[] py, int i) {
    gather(px[i], py[i]);
    for (int time = 0; time < 4; time++) {
      double d = measure(px[i], py[i]);
      if (d < 1e-9 || Math.abs(d - radius) < 1e-7) {
        return;
      }
      px[i] = wallX + (px[i] - wallX) * radius / d;
      py[i] = wallY + (py[i] - wallY) * radius / d;
    }
    double d = measure(px[i], py[i]);
    if (d < radius - 0.001 && d > 1e-9) {
      double out = (radius - d + 0.0005) / d;
      px[i] += (px[i] - wallX) * out;
      py[i] += (py[i] - wallY) * out;
      measure(px[i], py[i]);
    }
  }

  /**
   * The corner between two points on the ring where their tangents meet between them, or null.
   *
   * @param p X and Y, and the normal there, of length 1
   * @param q the same of the next
   */
  private double[] corner(double[] p, double[] q) {
    // Tangents: (c - p).n_p = 0 and (c - q).n_q = 0.
    double det = p[2] * q[3] - p[3] * q[2];
    if (Math.abs(det) < 1e-6) {
      return null;
    }
    double atP = p[0] * p[2] + p[1] * p[3];
    double atQ = q[0] * q[2] + q[1] * q[3];
    double x = (atP * q[3] - atQ * p[3]) / det;
    double y = (p[2] * atQ - q[2] * atP) / det;
    double reach = 3 * field.lattice.stepMm();
    if (Math.hypot(x - p[0], y - p[1]) > reach || Math.hypot(x - q[0], y - q[1]) > reach) {
      return null;
    }
    double ahead = (x - p[0]) * (q[0] - p[0]) + (y - p[1]) * (q[1] - p[1]);
    double behind = (q[0] - x) * (q[0] - p[0]) + (q[1] - y) * (q[1] - p[1]);
    if (ahead <= 0 || behind <= 0) {
      return null;
    }
    gather(x, y);
    return measure(x, y) < radius - 0.001 ? null : new double[] {x, y};
  }

  /** Edges that may be nearest at a point: those nearest to the sixteen nodes around it. */
  private void gather(double x, double y) {
    Lattice lattice = field.lattice;
    int i =
        Math.max(
            1, Math.min(lattice.columns() - 3, (int) ((x - lattice.minX()) / lattice.stepMm())));
    int j =
        Math.max(1, Math.min(lattice.rows() - 3, (int) ((y - lattice.minY()) / lattice.stepMm())));
    candidateCount = 0;
    for (int b = j - 1; b <= j + 2; b++) {
      for (int a = i - 1; a <= i + 2; a++) {
        int edge = field.nearest[b * lattice.columns() + a];
        if (edge >= 0 && !known(edge)) {
          candidates[candidateCount++] = edge;
        }
      }
    }
  }

  private boolean known(int edge) {
    for (int c = 0; c < candidateCount; c++) {
      if (candidates[c] == edge) {
        return true;
      }
    }
    return false;
  }

  /** Distance to the nearest candidate, whose nearest point goes into (wallX, wallY). */
  private double measure(double x, double y) {
    PocketEdges edges = field.edges;
    double best = Double.POSITIVE_INFINITY;
    int nearest = -1;
    for (int c = 0; c < candidateCount; c++) {
      double d = edges.squaredDistance(candidates[c], x, y);
      if (d < best) {
        best = d;
        nearest = candidates[c];
      }
    }
    if (nearest < 0) {
      return radius;
    }
    double t = edges.along(nearest, x, y);
    wallX = edges.ax[nearest] + t * (edges.bx[nearest] - edges.ax[nearest]);
    wallY = edges.ay[nearest] + t * (edges.by[nearest] - edges.ay[nearest]);
    return Math.sqrt(best);
  }
}
