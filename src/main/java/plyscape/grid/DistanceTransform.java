package plyscape.grid;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * For each cell of a grid the squared distance to the nearest source cell, in cells squared. Exact:
 * the distances are integers, between cell centres, Euclidean.
 *
 * <p>Method: A. Meijster, J. Roerdink, W. Hesselink, "A general algorithm for computing distance
 * transforms in linear time" (2000): nearest source within each column, then the lower envelope of
 * parabolas within each row. Linear in the cells; columns are shared out in strips and rows in
 * bands over the common pool.
 */
public final class DistanceTransform {

  /** The squared distance where there is no source at all. */
  public static final int NONE = Integer.MAX_VALUE;

  /** Longest side: twice the square of one less still fits an int. */
  public static final int MAX_SIDE = 32768;

  private static final int STRIP = 512;
  private static final int BAND = 32;

  private final int columns;
  private final int rows;

  /** First the row of the nearest source within the column, or -1, then the squared distance. */
  private final int[] cells;

  private DistanceTransform(int columns, int rows) {
    this.columns = columns;
    this.rows = rows;
    cells = new int[columns * rows];
  }

  /**
   * Squared distances in cells, row by row; {@link #NONE} everywhere when there is no source.
   *
   * @param source true at source cells, row by row
   * @param columns 1 to {@link #MAX_SIDE}
   * @param rows 1 to {@link #MAX_SIDE}
   * @throws IllegalArgumentException when the sizes don't fit
   */
  public static int[] squared(boolean[] source, int columns, int rows) {
    if (columns < 1
        || rows < 1
        || columns > MAX_SIDE
        || rows > MAX_SIDE
        || (long) columns * rows != source.length) {
      throw new IllegalArgumentException(source.length + " cells, not " + columns + " x " + rows);
    }
    var result = new DistanceTransform(columns, rows);
    int strips = (columns + STRIP - 1) / STRIP;
    IntStream.range(0, strips)
        .parallel()
        .forEach(i -> result.scanColumns(source, i * STRIP, Math.min((i + 1) * STRIP, columns)));
    int bands = (rows + BAND - 1) / BAND;
    IntStream.range(0, bands)
        .parallel()
        .forEach(i -> result.scanRows(i * BAND, Math.min((i + 1) * BAND, rows)));
    return result.cells;
  }

  private void scanColumns(boolean[] source, int from, int to) {
    for (int c = from; c < to; c++) {
      cells[c] = source[c] ? 0 : -1;
    }
    for (int r = 1; r < rows; r++) {
      int base = r * columns;
      for (int c = from; c < to; c++) {
        cells[base + c] = source[base + c] ? r : cells[base - columns + c];
      }
    }
    for (int r = rows - 2; r >= 0; r--) {
      int base = r * columns;
      for (int c = from; c < to; c++) {
        int above = cells[base + columns + c];
        int below = cells[base + c];
        // After this pass a row above holds its nearest; when that lies above us too, it may be
        // nearer than what is below.
        if (above > r && (below < 0 || above - r < r - below)) {
          cells[base + c] = above;
        }
      }
    }
  }

  private void scanRows(int from, int to) {
    int[] row = new int[columns];
    int[] height = new int[columns];
    int[] site = new int[columns];
    int[] start = new int[columns];
    for (int r = from; r < to; r++) {
      System.arraycopy(cells, r * columns, row, 0, columns);
      scanRow(r, row, height, site, start);
    }
  }

  /**
   * The lower envelope of the parabolas (x - u)^2 + height[u], u over the columns that have a
   * source; site[k] is the k-th parabola of the envelope, lowest from start[k] to start[k + 1] - 1.
   */
  private void scanRow(int r, int[] row, int[] height, int[] site, int[] start) {
    int base = r * columns;
    int top = -1;
    for (int u = 0; u < columns; u++) {
      if (row[u] < 0) {
        continue;
      }
      int lift = (row[u] - r) * (row[u] - r);
      height[u] = lift;
      int begin = 0;
      while (top >= 0) {
        int s = site[top];
        int t = start[top];
        if ((t - s) * (t - s) + height[s] <= (t - u) * (t - u) + lift) {
          // One past the last column where s is at most as high as u; not negative, as s still is
          // at t >= 0.
          begin = (u * u - s * s + lift - height[s]) / (2 * (u - s)) + 1;
          break;
        }
        top--;
      }
      if (begin < columns) {
        top++;
        site[top] = u;
        start[top] = begin;
      }
    }
    if (top < 0) {
      Arrays.fill(cells, base, base + columns, NONE);
      return;
    }
    int end = columns;
    for (int k = top; k >= 0; k--) {
      int s = site[k];
      int lift = height[s];
      for (int x = start[k]; x < end; x++) {
        cells[base + x] = (x - s) * (x - s) + lift;
      }
      end = start[k];
    }
  }
}
