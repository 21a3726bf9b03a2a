package plyscape.layup;

/** Small dense systems of linear equations, by elimination with row exchange. */
final class LinearSystem {

  private LinearSystem() {}

  /**
   * The x with {@code matrix x = right}; the arguments are left as they are.
   *
   * @throws ArithmeticException if the matrix is singular to working precision
   */
  static double[] solve(double[][] matrix, double[] right) {
    int n = right.length;
    double[][] a = new double[n][];
    for (int i = 0; i < n; i++) {
      a[i] = java.util.Arrays.copyOf(matrix[i], n + 1);
      a[i][n] = right[i];
    }
    for (int c = 0; c < n; c++) {
      int pivot = c;
      for (int r = c + 1; r < n; r++) {
        pivot = Math.abs(a[r][c]) > Math.abs(a[pivot][c]) ? r : pivot;
      }
      double[] swap = a[c];
      a[c] = a[pivot];
      a[pivot] = swap;
      if (a[c][c] == 0) {
        throw new ArithmeticException("singular");
      }
      for (int r = c + 1; r < n; r++) {
        double factor = a[r][c] / a[c][c];
        for (int k = c; k <= n && factor != 0; k++) {
          a[r][k] -= factor * a[c][k];
        }
      }
    }
    double[] x = new double[n];
    for (int r = n - 1; r >= 0; r--) {
      double sum = a[r][n];
      for (int k = r + 1; k < n; k++) {
        sum -= a[r][k] * x[k];
      }
      x[r] = sum / a[r][r];
    }
    return x;
  }
}
