package plyscape.toolpath.face;

import java.util.Arrays;

/**
 * The way of a tip along a line, gathered point by point and made certain in between: where the
 * depth changes fast (beside walls) more places are looked at, until what is left is a step so
 * short that going straight up first does no harm. Then thinned to what a straight line can't stand
 * in for.
 */
final class FaceProfile {

  /** A stretch steeper than this is looked at more closely. */
  private static final double STEEP = 0.15;

  /** Shortest stretch that is halved, mm: a quarter of what may come over a wall. */
  private static final double SHORTEST_MM = 0.005;

  /** A place nearer than this to the straight line is as good as on it, mm. */
  private static final double STRAIGHT_MM = 0.0015;

  /** Points nearer than this to a straight line are left out, mm. */
  private static final double THINNING_MM = 0.0025;

  private final DropCutter drop;
  private final double v;
  private double[] u = new double[64];
  private double[] depth = new double[64];
  private int count;

  FaceProfile(DropCutter drop, double v) {
    this.drop = drop;
    this.v = v;
  }

  /**
   * Goes on to a place.
   *
   * @param peak whether the way may rise and fall again before it
   */
  void to(double nextU, double nextDepth, boolean peak) {
    if (count > 0) {
      between(u[count - 1], depth[count - 1], nextU, nextDepth, peak);
    } else {
      put(nextU, nextDepth);
    }
  }

  private void between(double u0, double d0, double u1, double d1, boolean peak) {
    if (!peak && Math.abs(d1 - d0) <= STEEP * (u1 - u0)) {
      put(u1, d1);
      return;
    }
    if (u1 - u0 < SHORTEST_MM) {
      // Up first, then along, then down: never below either end in between.
      put(d1 < d0 ? u0 : u1, Math.min(d0, d1));
      put(u1, d1);
      return;
    }
    double middle = (u0 + u1) / 2;
    double at = drop.at(middle, v);
    if (Math.abs(at - (d0 + d1) / 2) <= STRAIGHT_MM) {
      put(u1, d1);
      return;
    }
    between(u0, d0, middle, at, peak);
    between(middle, at, u1, d1, peak);
  }

  private void put(double nextU, double nextDepth) {
    if (count == u.length) {
      u = Arrays.copyOf(u, 2 * count);
      depth = Arrays.copyOf(depth, 2 * count);
    }
    u[count] = nextU;
    depth[count++] = nextDepth;
  }

  /** The run, lifted by what rounding may cost. */
  FaceRun run(double liftMm) {
    boolean[] keep = new boolean[count];
    keep[0] = true;
    keep[count - 1] = true;
    thin(keep, 0, count - 1);
    double[] keptU = new double[count];
    double[] keptDepth = new double[count];
    int n = 0;
    for (int i = 0; i < count; i++) {
      if (keep[i]) {
        keptU[n] = u[i];
        keptDepth[n++] = depth[i] - liftMm;
      }
    }
    return new FaceRun(v, Arrays.copyOf(keptU, n), Arrays.copyOf(keptDepth, n));
  }

  /** Ramer, Douglas and Peucker: the point farthest off the straight line stays, and so on. */
  private void thin(boolean[] keep, int from, int to) {
    double du = u[to] - u[from];
    double dz = depth[to] - depth[from];
    double length = Math.hypot(du, dz);
    double most = THINNING_MM;
    int at = -1;
    for (int i = from + 1; i < to; i++) {
      double wu = u[i] - u[from];
      double wz = depth[i] - depth[from];
      double off = length < 1e-9 ? Math.hypot(wu, wz) : Math.abs(wu * dz - wz * du) / length;
      if (off > most) {
        most = off;
        at = i;
      }
    }
    if (at >= 0) {
      keep[at] = true;
      thin(keep, from, at);
      thin(keep, at, to);
    }
  }
}
