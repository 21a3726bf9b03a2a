package plyscape.toolpath.ring;

import java.util.Arrays;
import plyscape.toolpath.lattice.Ring;

/** Thins and divides polylines given as arrays of X and Y, mm. */
final class Polyline {

  private Polyline() {}

  /**
   * A ring without the points that can go while the rest stays within a tolerance of it; corners
   * stay.
   */
  static Ring thin(Ring ring, double toleranceMm) {
    int n = ring.size();
    if (n < 4) {
      return ring;
    }
    boolean[] keep = new boolean[n + 1];
    double[] x = ring.x();
    double[] y = ring.y();
    int last = n - 1;
    if (ring.closed()) {
      x = Arrays.copyOf(x, n + 1);
      y = Arrays.copyOf(y, n + 1);
      x[n] = x[0];
      y[n] = y[0];
      last = n;
      int far = farthest(x, y);
      keep[far] = true;
      mark(x, y, 0, far, toleranceMm * toleranceMm, keep);
      mark(x, y, far, last, toleranceMm * toleranceMm, keep);
    } else {
      mark(x, y, 0, last, toleranceMm * toleranceMm, keep);
    }
    keep[0] = true;
    keep[last] = true;
    int m = 0;
    double[] outX = new double[n];
    double[] outY = new double[n];
    for (int i = 0; i < n; i++) {
      if (keep[i]) {
        outX[m] = x[i];
        outY[m++] = y[i];
      }
    }
    return new Ring(ring.index(), ring.closed(), Arrays.copyOf(outX, m), Arrays.copyOf(outY, m));
  }

  private static int farthest(double[] x, double[] y) {
    int best = 1;
    double most = -1;
    for (int i = 1; i < x.length - 1; i++) {
      double d = (x[i] - x[0]) * (x[i] - x[0]) + (y[i] - y[0]) * (y[i] - y[0]);
      if (d > most) {
        most = d;
        best = i;
      }
    }
    return best;
  }

  /**
   * Douglas and Peucker's choice of points, with a stack of its own; runs are capped so that time
   * stays linear.
   */
  private static void mark(
      double[] x, double[] y, int from, int to, double squaredTolerance, boolean[] keep) {
    int cap = 400;
    for (int a = from; a < to; a += cap) {
      int b = Math.min(to, a + cap);
      keep[a] = true;
      keep[b] = true;
      split(x, y, a, b, squaredTolerance, keep);
    }
  }

  private static void split(
      double[] x, double[] y, int a, int b, double squaredTolerance, boolean[] keep) {
    if (b - a < 2) {
      return;
    }
    double dx = x[b] - x[a];
    double dy = y[b] - y[a];
    double length = dx * dx + dy * dy;
    double inverse = length < 1e-18 ? 0 : 1 / length;
    double most = squaredTolerance;
    int at = -1;
    for (int i = a + 1; i < b; i++) {
      double px = x[i] - x[a];
      double py = y[i] - y[a];
      double t = (px * dx + py * dy) * inverse;
      t = t < 0 ? 0 : t < 1 ? t : 1;
      double ex = px - t * dx;
      double ey = py - t * dy;
      double d = ex * ex + ey * ey;
      if (d > most) {
        most = d;
        at = i;
      }
    }
    if (at > 0) {
      keep[at] = true;
      split(x, y, a, at, squaredTolerance, keep);
      split(x, y, at, b, squaredTolerance, keep);
    }
  }
}
