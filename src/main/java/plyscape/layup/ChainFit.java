package plyscape.layup;

import java.util.ArrayList;
import java.util.List;

/**
 * Weighted least squares for a falling chain of depths that must keep their order: minimises {@code
 * sum w_k (x_k - y_k)^2 + sum c_k (x_{k+1} - x_k - g_k)^2} under {@code x_{k+1} - x_k >= gap_k},
 * {@code x_0 >= least}, {@code x_last <= greatest}. Exact: a strictly convex quadratic programme,
 * solved by the primal active-set method (Nocedal and Wright, <i>Numerical Optimization</i>,
 * algorithm 16.3).
 */
final class ChainFit {

  private static final int MOST_STEPS = 10_000;

  private final int n;
  private final double[][] hessian;
  private final double[] linear;
  private final List<double[]> rows = new ArrayList<>();
  private final List<Double> bounds = new ArrayList<>();

  /**
   * States the problem.
   *
   * @param weight w, at least 0, not all 0
   * @param value y
   * @param coupling c between k and k + 1, at least 0
   * @param difference g
   */
  ChainFit(double[] weight, double[] value, double[] coupling, double[] difference) {
    n = weight.length;
    hessian = new double[n][n];
    linear = new double[n];
    for (int k = 0; k < n; k++) {
      hessian[k][k] += weight[k];
      linear[k] -= weight[k] * value[k];
      if (k + 1 < n && coupling[k] > 0) {
        hessian[k][k] += coupling[k];
        hessian[k + 1][k + 1] += coupling[k];
        hessian[k][k + 1] -= coupling[k];
        hessian[k + 1][k] -= coupling[k];
        linear[k] += coupling[k] * difference[k];
        linear[k + 1] -= coupling[k] * difference[k];
      }
    }
  }

  /** Standard deviation of each x when weights are inverse variances, without the order's help. */
  double[] deviations() {
    double[] out = new double[n];
    for (int k = 0; k < n; k++) {
      double[] unit = new double[n];
      unit[k] = 1;
      out[k] = Math.sqrt(LinearSystem.solve(hessian, unit)[k]);
    }
    return out;
  }

  /** The unconstrained best. */
  double[] free() {
    double[] right = new double[n];
    for (int k = 0; k < n; k++) {
      right[k] = -linear[k];
    }
    return LinearSystem.solve(hessian, right);
  }

  /**
   * The best in order.
   *
   * @param start a chain that keeps all bounds, to start from
   * @param gap least differences
   * @param least bound of the first
   * @param greatest bound of the last, may be infinite
   */
  double[] ordered(double[] start, double[] gap, double least, double greatest) {
    rows.clear();
    bounds.clear();
    constraint(0, 1, -1, 0, least);
    for (int k = 0; k + 1 < n; k++) {
      constraint(k, -1, k + 1, 1, gap[k]);
    }
    if (Double.isFinite(greatest)) {
      constraint(n - 1, -1, -1, 0, -greatest);
    }
    double[] x = start.clone();
    List<Integer> active = new ArrayList<>();
    for (int i = 0; i < MOST_STEPS; i++) {
      double[] stepAndForces = step(x, active);
      if (size(stepAndForces) < 1e-12) {
        int weakest = weakest(stepAndForces, active.size());
        if (weakest < 0) {
          return x;
        }
        active.remove(weakest);
      } else {
        advance(x, stepAndForces, active);
      }
    }
    throw new IllegalStateException("no end of " + MOST_STEPS + " steps");
  }

  private void constraint(int i, double a, int j, double b, double bound) {
    double[] row = new double[n];
    row[i] = a;
    if (j >= 0) {
      row[j] = b;
    }
    rows.add(row);
    bounds.add(bound);
  }

  /** Step to the best on the active constraints, followed by their forces (multipliers). */
  private double[] step(double[] x, List<Integer> active) {
    int m = n + active.size();
    double[][] a = new double[m][m];
    double[] right = new double[m];
    for (int i = 0; i < n; i++) {
      right[i] = -linear[i];
      for (int j = 0; j < n; j++) {
        a[i][j] = hessian[i][j];
        right[i] -= hessian[i][j] * x[j];
      }
      for (int c = 0; c < active.size(); c++) {
        a[i][n + c] = -rows.get(active.get(c))[i];
        a[n + c][i] = rows.get(active.get(c))[i];
      }
    }
    return LinearSystem.solve(a, right);
  }

  private double size(double[] stepAndForces) {
    double size = 0;
    for (int i = 0; i < n; i++) {
      size = Math.max(size, Math.abs(stepAndForces[i]));
    }
    return size;
  }

  private int weakest(double[] stepAndForces, int count) {
    int weakest = -1;
    double force = -1e-9;
    for (int c = 0; c < count; c++) {
      if (stepAndForces[n + c] < force) {
        force = stepAndForces[n + c];
        weakest = c;
      }
    }
    return weakest;
  }

  private void advance(double[] x, double[] step, List<Integer> active) {
    double share = 1;
    int blocking = -1;
    for (int c = 0; c < rows.size(); c++) {
      if (active.contains(c)) {
        continue;
      }
      double along = 0;
      double now = 0;
      for (int i = 0; i < n; i++) {
        along += rows.get(c)[i] * step[i];
        now += rows.get(c)[i] * x[i];
      }
      if (along < 0) {
        double room = Math.max(0, (bounds.get(c) - now) / along);
        if (room < share) {
          share = room;
          blocking = c;
        }
      }
    }
    for (int i = 0; i < n; i++) {
      x[i] += share * step[i];
    }
    if (blocking >= 0) {
      active.add(blocking);
    }
  }
}
