package plyscape.bench;

/** Exponents of growth: what power of the size a time goes with; 1 is linear. */
public final class Growth {

  private Growth() {}

  /**
   * The exponent that fits best: the slope of a straight line by least squares through the
   * logarithms.
   *
   * @param sizes at least two, all over 0
   * @param times as many, all over 0
   */
  public static double exponent(double[] sizes, double[] times) {
    int n = sizes.length;
    double x = 0;
    double y = 0;
    for (int i = 0; i < n; i++) {
      x += Math.log(sizes[i]) / n;
      y += Math.log(times[i]) / n;
    }
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < n; i++) {
      double dx = Math.log(sizes[i]) - x;
      xx += dx * dx;
      xy += dx * (Math.log(times[i]) - y);
    }
    return xy / xx;
  }

  /** The exponent of the last step alone. */
  public static double last(double[] sizes, double[] times) {
    int n = sizes.length;
    return Math.log(times[n - 1] / times[n - 2]) / Math.log(sizes[n - 1] / sizes[n - 2]);
  }
}
