package plyscape.layup;

/**
 * Depth of one boundary at every place, and its error there, as what the estimate makes of the
 * sources of error: both are {@code first + second x + third y + fourth (x^2 + y^2)}, with x and y
 * from the panel's centre in units of 100 mm. Immutable.
 */
public final class BoundaryForm {

  private final double[] mean;
  private final double[][] coefficients;
  private final double[] tolerances;
  private final double[] squares;

  /**
   * A form.
   *
   * @param mean four, mm
   * @param coefficients four rows with a coefficient a source: error of the estimate for a unit of
   *     the source's
   * @param tolerances plus or minus of each source, kept, not copied
   */
  BoundaryForm(double[] mean, double[][] coefficients, double[] tolerances) {
    this.mean = mean;
    this.coefficients = coefficients;
    this.tolerances = tolerances;
    this.squares =
        new double[] {
          product(0, 0),
          product(1, 1),
          product(2, 2),
          product(0, 1),
          product(0, 2),
          product(1, 2),
          product(3, 3),
          product(0, 3),
          product(1, 3),
          product(2, 3)
        };
  }

  /** Expected depth, mm. */
  double depthMm(double x, double y) {
    return mean[0] + mean[1] * x + mean[2] * y + mean[3] * (x * x + y * y);
  }

  /** Plus or minus on it, mm. */
  public double toleranceMm(double x, double y, Method method) {
    if (method == Method.WORST) {
      double sum = 0;
      for (int s = 0; s < tolerances.length; s++) {
        sum += Math.abs(coefficient(s, x, y)) * tolerances[s];
      }
      return sum;
    }
    double sum = squares[0] + squares[1] * x * x + squares[2] * y * y;
    sum += 2 * (squares[3] * x + squares[4] * y + squares[5] * x * y);
    double out = x * x + y * y;
    sum += out * (squares[6] * out + 2 * (squares[7] + squares[8] * x + squares[9] * y));
    return Math.sqrt(Math.max(0, sum));
  }

  /** Error of the estimate for a unit of a source's. */
  public double coefficient(int source, double x, double y) {
    return coefficients[0][source]
        + coefficients[1][source] * x
        + coefficients[2][source] * y
        + coefficients[3][source] * (x * x + y * y);
  }

  private double product(int a, int b) {
    double sum = 0;
    for (int s = 0; s < tolerances.length; s++) {
      sum += coefficients[a][s] * coefficients[b][s] * tolerances[s] * tolerances[s];
    }
    return sum;
  }
}
