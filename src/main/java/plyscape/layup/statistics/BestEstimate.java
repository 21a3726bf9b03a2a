package plyscape.layup.statistics;

/**
 * Best linear unbiased estimates from readings whose errors are correlated and whose mean is a
 * combination of known drift functions with unknown factors (universal kriging; Kitanidis,
 * <i>Introduction to Geostatistics</i>, 1997, chapters 3 and 6). Solves {@code [K F; F' 0] [w; m] =
 * [k; f]}; one inverse serves all estimates. Immutable; takes time with the cube of the readings.
 */
public final class BestEstimate {

  private final int readings;
  private final double[][] inverse;

  /**
   * Readings.
   *
   * @param covariance K of the readings, their own errors included
   * @param drift F: a row a reading, a column a drift function
   * @throws ArithmeticException if the readings can't tell the drift functions apart
   */
  public BestEstimate(double[][] covariance, double[][] drift) {
    readings = covariance.length;
    int functions = readings == 0 ? 0 : drift[0].length;
    double[][] bordered = new double[readings + functions][readings + functions];
    for (int i = 0; i < readings; i++) {
      System.arraycopy(covariance[i], 0, bordered[i], 0, readings);
      for (int f = 0; f < functions; f++) {
        bordered[i][readings + f] = drift[i][f];
        bordered[readings + f][i] = drift[i][f];
      }
    }
    inverse = LinearSystem.inverse(bordered);
  }

  /**
   * Weights of the readings, followed by the multipliers m, for a quantity.
   *
   * @param covariance k of the quantity with each reading
   * @param drift f of the quantity
   */
  public double[] weights(double[] covariance, double... drift) {
    double[] out = new double[inverse.length];
    for (int i = 0; i < out.length; i++) {
      for (int j = 0; j < readings; j++) {
        out[i] += inverse[i][j] * covariance[j];
      }
      for (int f = readings; f < inverse.length; f++) {
        out[i] += inverse[i][f] * drift[f - readings];
      }
    }
    return out;
  }

  /**
   * How far a reading lies from the estimate of it that all others give (Dubrule, <i>Mathematical
   * Geology</i> 15, 1983); not a number where the others say nothing.
   */
  public LeftOut leftOut(int reading, double[] values) {
    double sum = 0;
    for (int j = 0; j < readings; j++) {
      sum += inverse[reading][j] * values[j];
    }
    double weight = inverse[reading][reading];
    return weight > 0
        ? new LeftOut(sum / weight, Math.sqrt(1 / weight))
        : new LeftOut(Double.NaN, Double.POSITIVE_INFINITY);
  }

  /**
   * A reading against the estimate from all others.
   *
   * @param off reading less estimate
   * @param sigma deviation of that difference, the reading's own error in it
   */
  public record LeftOut(double off, double sigma) {}
}
