package plyscape.toolpath.ring;

import java.util.Arrays;
import plyscape.toolpath.lattice.Ring;

/**
 * Rounds the inner corners of a wall ring, for a cutter that another will follow: a cutter of some
 * size leaves the corner of a pocket to a smaller one anyway, and need not stop there. The way is
 * only ever moved off the walls.
 */
final class CornerRounding {

  private static final double LEAST_TURN = Math.toRadians(14);

  /** What is this straight may be rounded: the curve then comes no nearer to a wall than that. */
  private static final double STRAIGHT_MM = 0.003;

  private CornerRounding() {}

  /** The ring with left turns rounded to about a radius, mm. */
  static Ring round(Ring ring, double radiusMm) {
    if (!ring.closed() || ring.size() < 8) {
      return ring;
    }
    int n = ring.size();
    double[] way = new double[n + 1];
    for (int i = 1; i <= n; i++) {
      way[i] =
          way[i - 1]
              + Math.hypot(ring.x()[i % n] - ring.x()[i - 1], ring.y()[i % n] - ring.y()[i - 1]);
    }
    double total = way[n];
    // Cut-outs as [from, to) along the ring, in order, not overlapping.
    double[] from = new double[n];
    double[] to = new double[n];
    int cuts = 0;
    double free = 0;
    double end = total;
    for (int i = 0; i < n; i++) {
      double turn = turn(ring, i);
      if (turn < LEAST_TURN) {
        continue;
      }
      double reach = Math.min(2 * radiusMm, radiusMm * Math.tan(turn / 2));
      double room = Math.min(way[i] - free, (cuts > 0 ? end : total) - way[i]);
      reach = Math.min(reach, 0.9 * room);
      while (reach >= 0.02
          && way[i] - reach > 0
          && way[i] + reach < total
          && !straight(ring, way, i, reach)) {
        reach /= 2;
      }
      if (reach < 0.02 || way[i] - reach <= 0) {
        continue;
      }
      from[cuts] = way[i] - reach;
      to[cuts] = way[i] + reach;
      if (to[cuts] >= total) {
        continue;
      }
      free = to[cuts];
      cuts++;
    }
    return cuts == 0 ? ring : build(ring, way, from, to, cuts);
  }

  /**
   * Whether the ring runs straight from a reach before a corner to the corner and on to a reach
   * behind it.
   */
  private static boolean straight(Ring ring, double[] way, int corner, double reach) {
    double[] a = at(ring, way, way[corner] - reach);
    double[] b = at(ring, way, way[corner] + reach);
    for (int i = corner - 1; i > 0 && way[i] > way[corner] - reach; i--) {
      if (off(ring, i, a, corner) > STRAIGHT_MM) {
        return false;
      }
    }
    for (int i = corner + 1; i < ring.size() && way[i] < way[corner] + reach; i++) {
      if (off(ring, i, b, corner) > STRAIGHT_MM) {
        return false;
      }
    }
    return true;
  }

  private static double off(Ring ring, int i, double[] end, int corner) {
    double dx = end[0] - ring.x()[corner];
    double dy = end[1] - ring.y()[corner];
    double across = (ring.x()[i] - ring.x()[corner]) * dy - (ring.y()[i] - ring.y()[corner]) * dx;
    return Math.abs(across) / Math.max(1e-9, Math.hypot(dx, dy));
  }

  private static double turn(Ring ring, int i) {
    int n = ring.size();
    int a = (i + n - 1) % n;
    int b = (i + 1) % n;
    double ux = ring.x()[i] - ring.x()[a];
    double uy = ring.y()[i] - ring.y()[a];
    double vx = ring.x()[b] - ring.x()[i];
    double vy = ring.y()[b] - ring.y()[i];
    return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  }

  private static Ring build(Ring ring, double[] way, double[] from, double[] to, int cuts) {
    int n = ring.size();
    double[] x = new double[n + 10 * cuts];
    double[] y = new double[n + 10 * cuts];
    int m = 0;
    int cut = 0;
    for (int i = 0; i < n; i++) {
      if (cut < cuts && way[i] >= from[cut]) {
        double[] a = at(ring, way, from[cut]);
        double[] b = at(ring, way, to[cut]);
        double[] corner = corner(ring, way, from[cut], to[cut]);
        for (int s = 0; s <= 8; s++) {
          double t = s / 8.0;
          double p = (1 - t) * (1 - t);
          double q = 2 * t * (1 - t);
          double r = t * t;
          x[m] = p * a[0] + q * corner[0] + r * b[0];
          y[m++] = p * a[1] + q * corner[1] + r * b[1];
        }
        while (i < n && way[i] <= to[cut]) {
          i++;
        }
        i--;
        cut++;
        continue;
      }
      x[m] = ring.x()[i];
      y[m++] = ring.y()[i];
    }
    return new Ring(ring.index(), true, Arrays.copyOf(x, m), Arrays.copyOf(y, m));
  }

  private static double[] corner(Ring ring, double[] way, double from, double to) {
    return at(ring, way, (from + to) / 2);
  }

  private static double[] at(Ring ring, double[] way, double where) {
    int i = Arrays.binarySearch(way, where);
    i = i >= 0 ? i : -i - 2;
    int n = ring.size();
    i = Math.max(0, Math.min(n - 1, i));
    double t = (where - way[i]) / Math.max(1e-12, way[i + 1] - way[i]);
    int j = (i + 1) % n;
    return new double[] {
      ring.x()[i] + t * (ring.x()[j] - ring.x()[i]), ring.y()[i] + t * (ring.y()[j] - ring.y()[i])
    };
  }
}
