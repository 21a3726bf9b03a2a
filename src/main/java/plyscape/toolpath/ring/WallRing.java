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
        m += corner(px, py, normalX, normalY, i, j, x, y, m);
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
   * Adds the corner between points i and j when the tangents meet between them; how many points
   * were added.
   */
  private int corner(
      double[] px,
      double[] py,
      double[] nx,
      double[] ny,
      int i,
      int j,
      double[] x,
      double[] y,
      int m) {
    // Tangents: (p - p_i).n_i = 0 and (p - p_j).n_j = 0.
    double det = nx[i] * ny[j] - ny[i] * nx[j];
    if (Math.abs(det) < 1e-6) {
      return 0;
    }
    double ci = px[i] * nx[i] + py[i] * ny[i];
    double cj = px[j] * nx[j] + py[j] * ny[j];
    double qx = (ci * ny[j] - cj * ny[i]) / det;
    double qy = (nx[i] * cj - nx[j] * ci) / det;
    double reach = 3 * field.lattice.stepMm();
    if (Math.hypot(qx - px[i], qy - py[i]) > reach || Math.hypot(qx - px[j], qy - py[j]) > reach) {
      return 0;
    }
    double ahead = (qx - px[i]) * (px[j] - px[i]) + (qy - py[i]) * (py[j] - py[i]);
    double behind = (px[j] - qx) * (px[j] - px[i]) + (py[j] - qy) * (py[j] - py[i]);
    if (ahead <= 0 || behind <= 0) {
      return 0;
    }
    gather(qx, qy);
    if (measure(qx, qy) < radius - 0.001) {
      return 0;
    }
    x[m] = qx;
    y[m] = qy;
    return 1;
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
