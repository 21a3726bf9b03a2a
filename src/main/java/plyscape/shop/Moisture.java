package plyscape.shop;

/** Moisture of wood, in percent of its dry weight, and the change of size that comes with it. */
public final class Moisture {

  /** Fibre saturation: moisture above it doesn't change sizes. <i>Wood Handbook</i>, chapter 13. */
  private static final double SATURATION = 30;

  /** The range in which the linear coefficients hold. */
  private static final double LINEAR_FROM = 6;

  private static final double LINEAR_TO = 14;

  private Moisture() {}

  /**
   * Moisture that wood comes to in air: <i>Wood Handbook</i>, chapter 4, after Hailwood and
   * Horrobin.
   *
   * @param celsius temperature of the air
   * @param humidity relative humidity, 0 to below 1
   */
  public static double equilibrium(double celsius, double humidity) {
    double t = celsius;
    double w = 349 + 1.29 * t + 0.0135 * t * t;
    double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    double kh = k * humidity;
    double bound = k1 * kh + 2 * k1 * k2 * kh * kh;
    return 1800 / w * (kh / (1 - kh) + bound / (1 + k1 * kh + k1 * k2 * kh * kh));
  }

  /**
   * Change of a size when moisture goes from one value to another: <i>Wood Handbook</i>, formula
   * 13-2 while both lie in 6 to 14 %, else 13-3.
   *
   * @param size at the first moisture, any unit; the result has the same
   * @param change coefficient a percent
   * @param shrinkage percent from green to oven-dry
   */
  public static double change(
      double size, double change, double shrinkage, double from, double to) {
    double first = Math.min(from, SATURATION);
    double second = Math.min(to, SATURATION);
    if (Math.min(first, second) >= LINEAR_FROM && Math.max(first, second) <= LINEAR_TO) {
      return size * change * (second - first);
    }
    return size * (second - first) / (SATURATION * 100 / shrinkage - SATURATION + first);
  }
}
