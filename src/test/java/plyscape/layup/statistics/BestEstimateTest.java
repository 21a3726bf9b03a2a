package plyscape.layup.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Values of references-2.md, section 8, with their sources there. */
class BestEstimateTest {

  private static final double[][] WALKER_LAKE = {
    {61, 139}, {63, 140}, {64, 129}, {68, 128}, {71, 140}, {73, 141}, {75, 128}
  };
  private static final double[] WALKER_VALUES = {477, 696, 227, 646, 606, 791, 783};

  /** Kitanidis, Introduction to Geostatistics (1997), example 3.2: linear variogram. */
  /** Variance of the estimate's error, by the textbook formula from the weights. */
  private static double variance(
      BestEstimate best, double own, double[] covariance, double... drift) {
    double[] weights = best.weights(covariance, drift);
    double sum = own;
    for (int i = 0; i < weights.length; i++) {
      int reading = covariance.length;
      sum -= weights[i] * (i < reading ? covariance[i] : drift[i - reading]);
    }
    return sum;
  }

  @Test
  void ordinaryKriging_kitanidis() {
    double[][] at = {{9.7, 47.6}, {43.8, 24.6}};
    // A covariance that falls from a large sill as the variogram 0.1 + 0.006 h rises is the same.
    double sill = 1000;
    DoubleUnaryOperator covariance = h -> h == 0 ? sill : sill - 0.1 - 0.006 * h;
    BestEstimate best = new BestEstimate(matrix(at, covariance), ones(2));
    double[] k = column(at, new double[] {18.8, 67.9}, covariance);
    double[] w = best.weights(k, 1);
    assertEquals(0.740081, w[0], 2e-6);
    assertEquals(0.259919, w[1], 2e-6);
    assertEquals(1.6364, w[0] * 1.22 + w[1] * 2.822, 5e-5);
    assertEquals(0.4201, variance(best, sill, k, 1), 5e-5);
    double[] datum = column(at, at[1], covariance);
    assertEquals(2.822, value(best.weights(datum, 1), 1.22, 2.822), 1e-9);
    assertEquals(0, variance(best, sill, datum, 1), 1e-9);
  }

  /** Isaaks and Srivastava, Applied Geostatistics (1989), chapter 12. */
  @Test
  void ordinaryKriging_isaaksAndSrivastava() {
    DoubleUnaryOperator covariance = h -> 10 * Math.exp(-0.3 * h);
    BestEstimate best = new BestEstimate(matrix(WALKER_LAKE, covariance), ones(7));
    double[] k = column(WALKER_LAKE, new double[] {65, 137}, covariance);
    double[] w = best.weights(k, 1);
    double[] expected = {0.173, 0.318, 0.129, 0.086, 0.151, 0.057, 0.086};
    assertArrayEquals(expected, Arrays.copyOf(w, 7), 5e-4);
    assertEquals(592.7289, value(w, WALKER_VALUES), 5e-5);
    assertEquals(8.95605, variance(best, 10, k, 1), 5e-6);
  }

  /** The same with a linear drift; the drift itself comes back. */
  @Test
  void universalKriging_linearDrift() {
    DoubleUnaryOperator covariance = h -> 10 * Math.exp(-0.3 * h);
    double[][] drift =
        Arrays.stream(WALKER_LAKE).map(p -> new double[] {1, p[0], p[1]}).toArray(double[][]::new);
    BestEstimate best = new BestEstimate(matrix(WALKER_LAKE, covariance), drift);
    double[] k = column(WALKER_LAKE, new double[] {65, 137}, covariance);
    double[] w = best.weights(k, 1, 65, 137);
    assertEquals(567.6621, value(w, WALKER_VALUES), 5e-4);
    assertEquals(9.03828, variance(best, 10, k, 1, 65, 137), 5e-5);
    double[] plane = Arrays.stream(WALKER_LAKE).mapToDouble(p -> 3 + p[0] - 2 * p[1]).toArray();
    assertEquals(3 + 65 - 2 * 137, value(w, plane), 1e-8);
  }

  /** One dimension, drift (1, x), C = exp(-h): left out one by one. */
  @Test
  void leaveOneOut_dubrule() {
    double[] x = {0, 1, 2, 4};
    double[] z = {1, 3, 2, 6};
    double[][] covariance = new double[4][4];
    double[][] drift = new double[4][];
    for (int i = 0; i < 4; i++) {
      drift[i] = new double[] {1, x[i]};
      for (int j = 0; j < 4; j++) {
        covariance[i][j] = Math.exp(-Math.abs(x[i] - x[j]));
      }
    }
    BestEstimate best = new BestEstimate(covariance, drift);
    double[] off = {-0.543761, 1.395387, -1.878761, 2.688518};
    double[] variance = {1.823952, 0.825885, 0.969381, 4.918077};
    for (int i = 0; i < 4; i++) {
      assertEquals(off[i], best.leftOut(i, z).off(), 5e-7);
      assertEquals(variance[i], Math.pow(best.leftOut(i, z).sigma(), 2), 5e-7);
    }
    double[] at = {3, 6, 1};
    double[] estimate = {4.161875, 8.040169, 3};
    double[] errors = {0.824494, 2.982658, 0};
    for (int t = 0; t < at.length; t++) {
      double place = at[t];
      double[] k = Arrays.stream(x).map(v -> Math.exp(-Math.abs(v - place))).toArray();
      assertEquals(estimate[t], value(best.weights(k, 1, place), z), 1e-6);
      assertEquals(errors[t], variance(best, 1, k, 1, place), 1e-6);
    }
  }

  /** NIST StRD NoInt1 and NoInt2 (certified values): a line through the origin. */
  @Test
  void leastSquares_nistNoIntercept() {
    assertLine(new double[] {4, 5, 6}, new double[] {3, 4, 4}, 0.727272727272727, 1e-13);
    double[] x = new double[11];
    double[] y = new double[11];
    for (int i = 0; i < 11; i++) {
      x[i] = 60 + i;
      y[i] = 130 + i;
    }
    assertLine(x, y, 2.07438016528926, 1e-12);
  }

  /** A reading that alone tells the drift has nothing to be held against. */
  @Test
  void leaveOneOut_ofASingleReading_saysNothing() {
    BestEstimate best = new BestEstimate(new double[][] {{0.01}}, new double[][] {{2}});
    double sigma = best.leftOut(0, new double[] {0.3}).sigma();
    assertTrue(sigma == Double.POSITIVE_INFINITY || sigma > 1e4, "sigma " + sigma);
  }

  private static void assertLine(double[] x, double[] y, double slope, double within) {
    double[][] unit = new double[x.length][x.length];
    double[][] drift = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      unit[i][i] = 1;
      drift[i] = new double[] {x[i]};
    }
    BestEstimate best = new BestEstimate(unit, drift);
    assertEquals(slope, value(best.weights(new double[x.length], 1), y), within);
  }

  private static double value(double[] weights, double... values) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weights[i] * values[i];
    }
    return sum;
  }

  private static double[][] ones(int n) {
    double[][] out = new double[n][1];
    Arrays.stream(out).forEach(row -> row[0] = 1);
    return out;
  }

  private static double[][] matrix(double[][] at, DoubleUnaryOperator covariance) {
    return Arrays.stream(at).map(p -> column(at, p, covariance)).toArray(double[][]::new);
  }

  private static double[] column(double[][] at, double[] place, DoubleUnaryOperator covariance) {
    return Arrays.stream(at)
        .mapToDouble(p -> covariance.applyAsDouble(Math.hypot(p[0] - place[0], p[1] - place[1])))
        .toArray();
  }
}
