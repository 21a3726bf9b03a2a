package plyscape.terrain;

/**
 * Smooths a grid by a Gaussian: sampled at whole cells out to four sigma (rounded to a cell),
 * weights made up to one, the value of the nearest cell held beyond the edge; along rows, then
 * along columns.
 */
final class GaussianBlur {

  private static final double REACH_SIGMAS = 4;

  private GaussianBlur() {}

  /**
   * Smooths in place.
   *
   * @param sigmaX in cells along a row; 0 for none
   * @param sigmaY in cells along a column; 0 for none
   */
  static void blur(double[] values, int columns, int rows, double sigmaX, double sigmaY) {
    double[] alongX = kernel(sigmaX);
    double[] alongY = kernel(sigmaY);
    double[] line = new double[columns + 2 * alongX.length];
    for (int row = 0; row < rows && alongX.length > 1; row++) {
      smoothRow(values, row * columns, columns, alongX, line);
    }
    if (alongY.length > 1) {
      smoothColumns(values, columns, rows, alongY);
    }
  }

  /** Half of the symmetric weights: the middle one first. */
  static double[] kernel(double sigma) {
    int reach = (int) (REACH_SIGMAS * sigma + 0.5);
    double[] weights = new double[reach + 1];
    double sum = 0;
    for (int i = 0; i <= reach; i++) {
      weights[i] = i == 0 ? 1 : Math.exp(-0.5 * i * i / (sigma * sigma));
      sum += i == 0 ? 1 : 2 * weights[i];
    }
    for (int i = 0; i <= reach; i++) {
      weights[i] /= sum;
    }
    return weights;
  }

  private static void smoothRow(
      double[] values, int from, int columns, double[] kernel, double[] line) {
    int reach = kernel.length - 1;
    for (int i = -reach; i < columns + reach; i++) {
      line[i + reach] = values[from + Math.min(Math.max(i, 0), columns - 1)];
    }
    for (int i = 0; i < columns; i++) {
      double sum = kernel[0] * line[i + reach];
      for (int k = 1; k <= reach; k++) {
        sum += kernel[k] * (line[i + reach - k] + line[i + reach + k]);
      }
      values[from + i] = sum;
    }
  }

  /** Works row-wise in memory, on a ring of the rows that were already written over. */
  private static void smoothColumns(double[] values, int columns, int rows, double[] kernel) {
    int reach = kernel.length - 1;
    double[][] before = new double[reach + 1][columns];
    for (int row = 0; row < rows; row++) {
      System.arraycopy(values, row * columns, before[row % (reach + 1)], 0, columns);
      double[] middle = before[row % (reach + 1)];
      int out = row * columns;
      for (int c = 0; c < columns; c++) {
        values[out + c] = kernel[0] * middle[c];
      }
      for (int k = 1; k <= reach; k++) {
        double weight = kernel[k];
        double[] south = before[Math.max(row - k, 0) % (reach + 1)];
        boolean inside = row + k < rows;
        double[] northRow = inside ? values : rows - 1 == row ? middle : values;
        int north = inside ? (row + k) * columns : rows - 1 == row ? 0 : (rows - 1) * columns;
        for (int c = 0; c < columns; c++) {
          values[out + c] += weight * (south[c] + northRow[north + c]);
        }
      }
    }
  }
}
