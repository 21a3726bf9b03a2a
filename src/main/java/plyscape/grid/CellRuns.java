package plyscape.grid;

import java.util.Arrays;
import java.util.stream.IntStream;

/** A set of cells of a grid, as runs along its rows. Immutable. */
public final class CellRuns {

  private static final int BAND = 32;

  private final int columns;

  /** In each row the first column of a run and the column past its end, and so on from the left. */
  private final int[][] rows;

  private CellRuns(int columns, int[][] rows) {
    this.columns = columns;
    this.rows = rows;
  }

  /**
   * The cells that are set.
   *
   * @param set row by row
   * @param columns cells in a row
   */
  public static CellRuns of(boolean[] set, int columns, int rows) {
    if ((long) columns * rows != set.length) {
      throw new IllegalArgumentException(set.length + " cells, not " + columns + " x " + rows);
    }
    int[][] runs = new int[rows][];
    for (int row = 0; row < rows; row++) {
      runs[row] = row(set, row * columns, columns);
    }
    return new CellRuns(columns, runs);
  }

  private static int[] row(boolean[] set, int base, int columns) {
    int[] runs = new int[16];
    int count = 0;
    boolean in = false;
    for (int column = 0; column < columns; column++) {
      if (set[base + column] != in) {
        in = !in;
        runs = put(runs, count++, column);
      }
    }
    if (in) {
      runs = put(runs, count++, columns);
    }
    return Arrays.copyOf(runs, count);
  }

  private static int[] put(int[] runs, int at, int column) {
    int[] room = at < runs.length ? runs : Arrays.copyOf(runs, 2 * at);
    room[at] = column;
    return room;
  }

  /**
   * The cells within a distance of any cell of the set, centre to centre: the set grown by a disk.
   * Exact, as {@link DistanceTransform} compared with the distance is, and faster. Rows are shared
   * out over the common pool; the result doesn't depend on how.
   *
   * @param squared the distance in cells, squared, the border included; negative for nothing at all
   */
  public CellRuns grown(int squared) {
    int[][] grown = new int[rows.length][];
    if (squared < 0) {
      Arrays.fill(grown, new int[0]);
      return new CellRuns(columns, grown);
    }
    int reach = (int) Math.sqrt(squared);
    int[] half = new int[reach + 1];
    for (int d = 0; d <= reach; d++) {
      half[d] = (int) Math.sqrt(squared - d * d);
    }
    IntStream.range(0, (rows.length + BAND - 1) / BAND)
        .parallel()
        .forEach(
            band -> {
              int[] change = new int[columns + 1];
              int end = Math.min(rows.length, (band + 1) * BAND);
              for (int row = band * BAND; row < end; row++) {
                grown[row] = grown(row, half, change);
              }
            });
    return new CellRuns(columns, grown);
  }

  /**
   * One row of the grown set.
   *
   * @param change all 0; left so
   */
  private int[] grown(int row, int[] half, int[] change) {
    int left = columns;
    int right = 0;
    int last = Math.min(rows.length - 1, row + half.length - 1);
    for (int from = Math.max(0, row - half.length + 1); from <= last; from++) {
      int[] runs = rows[from];
      int by = half[Math.abs(from - row)];
      for (int k = 0; k < runs.length; k += 2) {
        change[Math.max(0, runs[k] - by)]++;
        change[Math.min(columns, runs[k + 1] + by)]--;
      }
      if (runs.length > 0) {
        left = Math.min(left, Math.max(0, runs[0] - by));
        right = Math.max(right, Math.min(columns, runs[runs.length - 1] + by));
      }
    }
    int[] runs = new int[16];
    int count = 0;
    int over = 0;
    for (int column = left; column <= right; column++) {
      int more = change[column];
      if (more != 0) {
        change[column] = 0;
        if (over == 0 || over + more == 0) {
          runs = put(runs, count++, column);
        }
        over += more;
      }
    }
    return Arrays.copyOf(runs, count);
  }

  /** Writes a value at every cell of the set, row by row. */
  public void fill(byte[] values, byte value) {
    for (int row = 0; row < rows.length; row++) {
      int[] runs = rows[row];
      for (int k = 0; k < runs.length; k += 2) {
        Arrays.fill(values, row * columns + runs[k], row * columns + runs[k + 1], value);
      }
    }
  }
}
