package plyscape.layup.statistics;

/** Small dense systems of linear equations, by elimination with row exchange. */
public final class LinearSystem {

  private LinearSystem() {}

  /**
   * The inverse, by elimination with row exchange; rows and columns are scaled to a like size
   * first.
   *
   * @param matrix symmetric; left as it is
   * @throws ArithmeticException if the matrix is singular to working precision
   */
  public static double[][] inverse(double[][] matrix) {
    int n = matrix.length;
    double[] scale = new double[n];
    for (int i = 0; i < n; i++) {
      double largest = 0;
      for (double v : matrix[i]) {
        largest = Math.max(largest, Math.abs(v));
      }
      scale[i] = largest > 0 ? 1 / Math.sqrt(largest) : 1;
    }
    double[][] a = new double[n][2 * n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        a[i][j] = matrix[i][j] * scale[i] * scale[j];
      }
      a[i][n + i] = 1;
    }
    for (int c = 0; c < n; c++) {
      eliminate(a, c);
    }
    double[][] out = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        out[i][j] = a[i][n + j] * scale[i] * scale[j];
      }
    }
    return out;
  }

  private static void eliminate(double[][] a, int c) {
    int n = a.length;
    int pivot = c;
    for (int r = c + 1; r < n; r++) {
      pivot = Math.abs(a[r][c]) > Math.abs(a[pivot][c]) ? r : pivot;
    }
    double[] row = a[pivot];
    a[pivot] = a[c];
    a[c] = row;
    double head = row[c];
    if (head == 0) {
      throw new ArithmeticException("singular");
    }
    for (int k = c; k < 2 * n; k++) {
      row[k] /= head;
    }
    for (int r = 0; r < n; r++) {
      double factor = r == c ? 0 : a[r][c];
      for (int k = c; k < 2 * n && factor != 0; k++) {
        a[r][k] -= factor * row[k];
      }
    }
  }
}
