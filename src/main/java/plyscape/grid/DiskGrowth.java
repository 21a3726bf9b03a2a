package plyscape.grid;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The cells of a grid within a distance of any cell of a set, centre to centre: the set grown by a
 * disk. Exact, as {@link DistanceTransform} compared with the distance is, and faster, as it goes
 * by runs of cells. Rows are shared out over the common pool; the result doesn't depend on how.
 */
public final class DiskGrowth {

  private static final int BAND = 32;

  private DiskGrowth() {}

  /**
   * Grows a set of cells.
   *
   * @param set row by row
   * @param columns cells in a row
   * @param rows rows
   * @param squared the distance in cells, squared, the border included; negative for nothing at all
   */
  public static boolean[] of(boolean[] set, int columns, int rows, int squared) {
    if ((long) columns * rows != set.length) {
      throw new IllegalArgumentException(set.length + " cells, not " + columns + " x " + rows);
    }
    boolean[] grown = new boolean[set.length];
    if (squared < 0) {
      return grown;
    }
    int reach = (int) Math.sqrt(squared);
    int[] half = new int[reach + 1];
    for (int d = 0; d <= reach; d++) {
      half[d] = (int) Math.sqrt(squared - d * d);
    }
    int[][] runs = new int[rows][];
    IntStream.range(0, rows)
        .parallel()
        .forEach(row -> runs[row] = runs(set, row * columns, columns));
    IntStream.range(0, (rows + BAND - 1) / BAND)
        .parallel()
        .forEach(
            band -> {
              int[] change = new int[columns + 1];
              int end = Math.min(rows, (band + 1) * BAND);
              for (int row = band * BAND; row < end; row++) {
                Arrays.fill(change, 0);
                int last = Math.min(rows - 1, row + reach);
                for (int from = Math.max(0, row - reach); from <= last; from++) {
                  widen(runs[from], half[Math.abs(from - row)], columns, change);
                }
                fill(change, grown, row * columns);
              }
            });
    return grown;
  }

  /** First columns of runs and, after each, the column past its end. */
  private static int[] runs(boolean[] set, int base, int columns) {
    int[] runs = new int[16];
    int count = 0;
    boolean in = false;
    for (int column = 0; column <= columns; column++) {
      boolean here = column < columns && set[base + column];
      if (here != in) {
        if (count == runs.length) {
          runs = Arrays.copyOf(runs, 2 * count);
        }
        runs[count++] = column;
        in = here;
      }
    }
    return Arrays.copyOf(runs, count);
  }

  /** Notes where more and where fewer widened runs hold. */
  private static void widen(int[] runs, int by, int columns, int[] change) {
    for (int k = 0; k < runs.length; k += 2) {
      change[Math.max(0, runs[k] - by)]++;
      change[Math.min(columns, runs[k + 1] + by)]--;
    }
  }

  private static void fill(int[] change, boolean[] grown, int base) {
    int over = 0;
    for (int column = 0; column < change.length - 1; column++) {
      over += change[column];
      grown[base + column] = over > 0;
    }
  }
}
