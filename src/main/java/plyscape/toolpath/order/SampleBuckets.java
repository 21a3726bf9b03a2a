package plyscape.toolpath.order;

import java.util.function.IntConsumer;

/** Points sorted into square cells, so that those near a place are found at once. Immutable. */
final class SampleBuckets {

  private final double cell;
  private final double minX;
  private final double minY;
  private final int columns;
  private final int rows;

  /** Where the points of each cell begin in {@link #points}; one more at the end. */
  private final int[] starts;

  private final int[] points;

  /**
   * @param x of the points, mm
   * @param y the same
   * @param cellMm side of a cell: what is nearer than this is found
   */
  SampleBuckets(double[] x, double[] y, double cellMm) {
    cell = cellMm;
    double lowX = Double.POSITIVE_INFINITY;
    double lowY = Double.POSITIVE_INFINITY;
    double highX = Double.NEGATIVE_INFINITY;
    double highY = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < x.length; i++) {
      lowX = Math.min(lowX, x[i]);
      highX = Math.max(highX, x[i]);
      lowY = Math.min(lowY, y[i]);
      highY = Math.max(highY, y[i]);
    }
    minX = lowX;
    minY = lowY;
    columns = x.length == 0 ? 0 : (int) ((highX - lowX) / cell) + 1;
    rows = x.length == 0 ? 0 : (int) ((highY - lowY) / cell) + 1;
    starts = new int[Math.multiplyExact(columns, rows) + 1];
    for (int i = 0; i < x.length; i++) {
      starts[at(x[i], y[i]) + 1]++;
    }
    for (int c = 1; c < starts.length; c++) {
      starts[c] += starts[c - 1];
    }
    points = new int[x.length];
    int[] next = starts.clone();
    for (int i = 0; i < x.length; i++) {
      points[next[at(x[i], y[i])]++] = i;
    }
  }

  private int at(double x, double y) {
    int column = (int) ((x - minX) / cell);
    int row = (int) ((y - minY) / cell);
    return row * columns + column;
  }

  /** All points in the cell of one of the points and in the eight around it, in a fixed order. */
  void around(double x, double y, IntConsumer found) {
    int column = (int) ((x - minX) / cell);
    int row = (int) ((y - minY) / cell);
    for (int j = Math.max(0, row - 1); j <= Math.min(rows - 1, row + 1); j++) {
      for (int i = Math.max(0, column - 1); i <= Math.min(columns - 1, column + 1); i++) {
        int c = j * columns + i;
        for (int k = starts[c]; k < starts[c + 1]; k++) {
          found.accept(points[k]);
        }
      }
    }
  }
}
