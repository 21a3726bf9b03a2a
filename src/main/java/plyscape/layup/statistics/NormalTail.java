package plyscape.layup.statistics;

/** The upper tail of the standard normal distribution, and its inverse. */
public final class NormalTail {

  private NormalTail() {}

  /**
   * Probability that a standard normal value is above {@code z}, to about 1e-14 relative for z
   * above -1.
   *
   * <p>Below 2.5 by the Taylor series of the distribution function about 0, above by the continued
   * fraction of Laplace (Abramowitz and Stegun, <i>Handbook of Mathematical Functions</i>, 26.2.10
   * and 26.2.14).
   */
  public static double above(double z) {
    if (z < 0) {
      return 1 - above(-z);
    }
    double density = Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
    if (z < 2.5) {
      double term = z;
      double sum = z;
      for (int k = 1; term > sum * 1e-17; k++) {
        term *= z * z / (2 * k + 1);
        sum += term;
      }
      return 0.5 - density * sum;
    }
    double fraction = z;
    for (int k = 120; k >= 1; k--) {
      fraction = z + k / fraction;
    }
    return density / fraction;
  }

  /**
   * The z above which a standard normal value lies with the given probability, by bisection; for
   * {@code 1e-300 < p < 1}.
   */
  public static double inverse(double probability) {
    double low = -40;
    double high = 40;
    for (int i = 0; i < 200 && high - low > 1e-15 * Math.max(1, Math.abs(low)); i++) {
      double mid = (low + high) / 2;
      if (above(mid) > probability) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return (low + high) / 2;
  }
}
