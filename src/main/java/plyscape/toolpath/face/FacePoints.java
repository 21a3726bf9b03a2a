package plyscape.toolpath.face;

import java.util.Arrays;

/** Places as numbers that grow: U, V and depth each. */
final class FacePoints {

  private double[] values = new double[0];
  private int count;

  void add(double u, double v, double depth) {
    if (count + 3 > values.length) {
      values = Arrays.copyOf(values, Math.max(48, 2 * count));
    }
    values[count++] = u;
    values[count++] = v;
    values[count++] = depth;
  }

  /** All that were added, in their order. */
  double[] values() {
    return Arrays.copyOf(values, count);
  }
}
