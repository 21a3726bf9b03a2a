package plyscape.terrain;

/**
 * Fills void cells with a smooth surface over the gap: the discrete Laplace equation, held to the
 * cells that have a value, so that the filled cells lie between the least and greatest of the gap's
 * edge. Coarse grids give the start (each the means of 2 x 2 cells of the finer one), then sweeps
 * settle each level: exact for the ear, not to the last digit.
 */
final class VoidFill {

  private static final int SWEEPS = 40;

  /** Over-relaxation; above 1 speeds the sweeps up, from 2 on they would diverge. */
  private static final double RELAXATION = 1.5;

  private VoidFill() {}

  /**
   * Fills the NaN in place.
   *
   * @return false, with nothing done, when every cell is void
   */
  static boolean fill(double[] values, int columns, int rows) {
    int voids = 0;
    for (double value : values) {
      voids += Double.isNaN(value) ? 1 : 0;
    }
    if (voids == values.length) {
      return false;
    }
    if (voids > 0) {
      solve(values, columns, rows, voids);
    }
    return true;
  }

  private static void solve(double[] values, int columns, int rows, int voids) {
    int[] gaps = new int[voids];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i])) {
        gaps[n++] = i;
      }
    }
    int halfColumns = (columns + 1) / 2;
    int halfRows = (rows + 1) / 2;
    double[] half = means(values, columns, rows, halfColumns, halfRows);
    int open = 0;
    for (double value : half) {
      open += Double.isNaN(value) ? 1 : 0;
    }
    if (open > 0) {
      solve(half, halfColumns, halfRows, open);
    }
    for (int i : gaps) {
      values[i] = between(half, halfColumns, halfRows, i % columns, i / columns);
    }
    for (int sweep = 0; sweep < SWEEPS; sweep++) {
      // The last sweeps without over-relaxation bring every cell back between its neighbours.
      relax(values, columns, rows, gaps, sweep < SWEEPS - 4 ? RELAXATION : 1);
    }
  }

  private static double[] means(
      double[] values, int columns, int rows, int halfColumns, int halfRows) {
    double[] sums = new double[halfColumns * halfRows];
    byte[] counts = new byte[sums.length];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        double value = values[row * columns + column];
        if (!Double.isNaN(value)) {
          int to = row / 2 * halfColumns + column / 2;
          sums[to] += value;
          counts[to]++;
        }
      }
    }
    for (int i = 0; i < sums.length; i++) {
      sums[i] = counts[i] == 0 ? Double.NaN : sums[i] / counts[i];
    }
    return sums;
  }

  /** Bilinear value of the half-size grid at a cell of the full one. */
  private static double between(double[] half, int columns, int rows, int column, int row) {
    double u = Math.min(Math.max((column + 0.5) / 2 - 0.5, 0), columns - 1);
    double v = Math.min(Math.max((row + 0.5) / 2 - 0.5, 0), rows - 1);
    int c = (int) u;
    int r = (int) v;
    int c1 = Math.min(c + 1, columns - 1);
    int r1 = Math.min(r + 1, rows - 1);
    double south = half[r * columns + c] * (1 - (u - c)) + half[r * columns + c1] * (u - c);
    double north = half[r1 * columns + c] * (1 - (u - c)) + half[r1 * columns + c1] * (u - c);
    return south * (1 - (v - r)) + north * (v - r);
  }

  private static void relax(double[] values, int columns, int rows, int[] gaps, double factor) {
    for (int i : gaps) {
      int column = i % columns;
      int row = i / columns;
      double sum = 0;
      int count = 0;
      if (column > 0) {
        sum += values[i - 1];
        count++;
      }
      if (column < columns - 1) {
        sum += values[i + 1];
        count++;
      }
      if (row > 0) {
        sum += values[i - columns];
        count++;
      }
      if (row < rows - 1) {
        sum += values[i + columns];
        count++;
      }
      values[i] += factor * (sum / count - values[i]);
    }
  }
}
