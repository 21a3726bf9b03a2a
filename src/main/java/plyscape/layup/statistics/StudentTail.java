package plyscape.layup.statistics;

/**
 * Student's t distribution for whole degrees of freedom, and the tail of the chi-square
 * distribution.
 */
public final class StudentTail {

  private StudentTail() {}

  /**
   * Probability that |t| is below the given value, exact finite sums (Abramowitz and Stegun,
   * <i>Handbook of Mathematical Functions</i>, 26.7.3 and 26.7.4).
   *
   * @param degrees 1 or more
   */
  public static double within(double t, int degrees) {
    double theta = Math.atan(Math.abs(t) / Math.sqrt(degrees));
    double cos = Math.cos(theta);
    double sin = Math.sin(theta);
    boolean odd = degrees % 2 == 1;
    double term = odd ? cos : 1;
    double sum = degrees == 1 ? 0 : term;
    for (int k = odd ? 2 : 1; k <= degrees - 3; k += 2) {
      term *= cos * cos * k / (k + 1);
      sum += term;
    }
    return odd ? 2 / Math.PI * (theta + sin * sum) : sin * sum;
  }

  /**
   * The t that |t| stays below with the given probability, {@code 0 < probability < 1}, by halving.
   */
  public static double halfWidth(double probability, int degrees) {
    double low = 0;
    double high = 1;
    while (within(high, degrees) < probability) {
      high *= 2;
    }
    for (int i = 0; i < 100; i++) {
      double mid = (low + high) / 2;
      if (within(mid, degrees) < probability) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return high;
  }

  /**
   * Probability that a chi-square value is above x; Wilson and Hilferty's cube root rule, good to a
   * few per cent here.
   */
  public static double chiSquareAbove(double x, int degrees) {
    double spread = 2.0 / (9 * degrees);
    return NormalTail.above((Math.cbrt(x / degrees) - (1 - spread)) / Math.sqrt(spread));
  }
}
