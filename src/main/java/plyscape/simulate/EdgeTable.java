package plyscape.simulate;

import java.util.Arrays;
import java.util.List;

/**
 * All edges of all targets, an edge that occurs twice kept once, with the depths on its two sides
 * (0 where there is none).
 */
final class EdgeTable {

  final double[] x0;
  final double[] y0;
  final double[] x1;
  final double[] y1;
  final double[] shallow;
  final double[] deep;
  int count;

  private final int[] slots;
  private final int mask;

  EdgeTable(List<Target> targets) {
    int most = 0;
    for (Target target : targets) {
      for (double[] ring : target.rings()) {
        most += ring.length / 2;
      }
    }
    x0 = new double[most];
    y0 = new double[most];
    x1 = new double[most];
    y1 = new double[most];
    shallow = new double[most];
    deep = new double[most];
    slots = new int[Integer.highestOneBit(Math.max(8, most)) * 4];
    mask = slots.length - 1;
    Arrays.fill(slots, -1);
    for (Target target : targets) {
      for (double[] ring : target.rings()) {
        int n = ring.length / 2;
        for (int i = 0; i < n; i++) {
          int j = (i + 1) % n;
          add(ring[2 * i], ring[2 * i + 1], ring[2 * j], ring[2 * j + 1], target.depthMm());
        }
      }
    }
  }

  private void add(double ax, double ay, double bx, double by, double depth) {
    if (ax == bx && ay == by) {
      return;
    }
    boolean forward = ax < bx || ax == bx && ay < by;
    double px = forward ? ax : bx;
    double py = forward ? ay : by;
    double qx = forward ? bx : ax;
    double qy = forward ? by : ay;
    int slot = hash(px, py, qx, qy) & mask;
    for (; slots[slot] >= 0; slot = slot + 1 & mask) {
      int e = slots[slot];
      if (x0[e] == px && y0[e] == py && x1[e] == qx && y1[e] == qy) {
        shallow[e] = Math.min(deep[e], depth);
        deep[e] = Math.max(deep[e], depth);
        return;
      }
    }
    slots[slot] = count;
    x0[count] = px;
    y0[count] = py;
    x1[count] = qx;
    y1[count] = qy;
    shallow[count] = 0;
    deep[count] = depth;
    count++;
  }

  private static int hash(double a, double b, double c, double d) {
    long h = Double.doubleToLongBits(a + 0.0);
    h = h * 0x9E3779B97F4A7C15L + Double.doubleToLongBits(b + 0.0);
    h = h * 0x9E3779B97F4A7C15L + Double.doubleToLongBits(c + 0.0);
    h = h * 0x9E3779B97F4A7C15L + Double.doubleToLongBits(d + 0.0);
    h ^= h >>> 32;
    h *= 0x9E3779B97F4A7C15L;
    return (int) (h >>> 32);
  }
}
