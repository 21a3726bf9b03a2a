package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;

/**
 * Contours of a field at evenly spaced values, by marching squares with linear interpolation along
 * lattice edges. The spacing must exceed one and a half lattice steps and the field be nowhere
 * steeper than 1, so that no square is crossed by two of them. Where a saddle is crossed the mean
 * of the corners decides. Exact for planes.
 */
public final class RingTracer {

  /** Bands of rows that are looked through by as many threads as there are. */
  private static final int BANDS = 8;

  private final Lattice lattice;
  private final int[] next;
  private final boolean[] entered;

  /** Pieces in each band of rows, in their order. */
  private final Band[] bands = new Band[BANDS];

  /** Holds the working arrays for one lattice; not for several threads. */
  public RingTracer(Lattice lattice) {
    this.lattice = lattice;
    next = new int[2 * lattice.size()];
    entered = new boolean[2 * lattice.size()];
    Arrays.fill(next, -1);
  }

  /**
   * The contours at base, base + spacing, ... up to a highest index.
   *
   * @param field values at the nodes
   * @param base value of index 0, mm
   * @param spacing mm between indices
   * @param lowest first index wanted
   * @param highest last index wanted
   * @param mask where to look, or null for everywhere; contours end at the rim of its blocks
   */
  public List<Ring> trace(
      float[] field, double base, double spacing, int lowest, int highest, CoarseMap mask) {
    int rows = lattice.rows() - 1;
    IntStream.range(0, BANDS)
        .parallel()
        .forEach(
            b -> {
              bands[b] = new Band(field, base, spacing, lowest, highest);
              bands[b].look(b * rows / BANDS, (b + 1) * rows / BANDS, mask);
            });
    List<Ring> rings = link(field, base, spacing);
    for (Band band : bands) {
      for (int s = 0; s < band.count; s++) {
        entered[band.ends[s]] = false;
      }
    }
    return rings;
  }

  /**
   * Finds the pieces of contours in some rows of squares. An edge is begun in one square and ended
   * in one, so bands don't write to the same places.
   */
  private final class Band {
    private final float[] field;
    private final double base;
    private final double spacing;
    private final int lowest;
    private final int highest;
    private int[] starts = new int[1024];
    private int[] ends = new int[1024];
    private int count;

    Band(float[] field, double base, double spacing, int lowest, int highest) {
      this.field = field;
      this.base = base;
      this.spacing = spacing;
      this.lowest = lowest;
      this.highest = highest;
    }

    void look(int from, int end, CoarseMap mask) {
      int columns = lattice.columns();
      int[] low = new int[columns];
      int[] high = new int[columns];
      int below = -1;
      for (int j = from; j < end; j++) {
        if (mask != null && !mask.anyInRow(j)) {
          continue;
        }
        boolean fresh = below != j || mask != null && mask.firstOfBlocks(j);
        below = j + 1;
        int left = 0;
        while (left < columns - 1) {
          int right =
              mask == null ? columns - 1 : Math.min(columns - 1, mask.lastOfBlock(left) + 1);
          if (mask == null || mask.has(left, j)) {
            if (fresh) {
              floors(j * columns, left, right, low);
            }
            floors((j + 1) * columns, left, right, high);
            squares(j * columns, left, right, low, high);
          }
          left = right;
        }
        int[] swap = low;
        low = high;
        high = swap;
      }
    }

    /** Indices of nodes of a row, both ends included. */
    private void floors(int row, int from, int to, int[] result) {
      float[] values = field;
      double zero = base;
      double inverse = 1 / spacing;
      for (int i = from; i <= to; i++) {
        double v = (values[row + i] - zero) * inverse;
        int whole = (int) v;
        result[i] = whole > v ? whole - 1 : whole;
      }
    }

    private void squares(int row, int left, int right, int[] low, int[] high) {
      for (int i = left; i < right; i++) {
        int top = low[i];
        if (top != low[i + 1] || top != high[i] || top != high[i + 1]) {
          top = Math.max(Math.max(top, low[i + 1]), Math.max(high[i], high[i + 1]));
          if (top >= lowest && top <= highest) {
            int kind =
                (low[i] == top ? 1 : 0)
                    | (low[i + 1] == top ? 2 : 0)
                    | (high[i + 1] == top ? 4 : 0)
                    | (high[i] == top ? 8 : 0);
            square(row + i, kind, base + top * spacing);
          }
        }
      }
    }

    /**
     * Adds the one or two pieces of a square, from edge to edge with the high corners on the left.
     */
    private void square(int k, int kind, double level) {
      int columns = lattice.columns();
      int south = 2 * k;
      int west = 2 * k + 1;
      int north = 2 * (k + columns);
      int east = 2 * (k + 1) + 1;
      boolean joined =
          (field[k] + (double) field[k + 1] + field[k + columns] + field[k + columns + 1]) / 4
              >= level;
      switch (kind) {
        case 1 -> add(south, west);
        case 2 -> add(east, south);
        case 3 -> add(east, west);
        case 4 -> add(north, east);
        case 5 -> {
          add(south, joined ? east : west);
          add(north, joined ? west : east);
        }
        case 6 -> add(north, south);
        case 7 -> add(north, west);
        case 8 -> add(west, north);
        case 9 -> add(south, north);
        case 10 -> {
          add(east, joined ? north : south);
          add(west, joined ? south : north);
        }
        case 11 -> add(east, north);
        case 12 -> add(west, east);
        case 13 -> add(south, east);
        case 14 -> add(west, south);
        default -> throw new IllegalStateException("square " + kind);
      }
    }

    private void add(int from, int to) {
      if (count == starts.length) {
        starts = Arrays.copyOf(starts, 2 * count);
        ends = Arrays.copyOf(ends, 2 * count);
      }
      next[from] = to;
      entered[to] = true;
      starts[count] = from;
      ends[count++] = to;
    }
  }

  private static int floor(float value, double base, double inverse) {
    double v = (value - base) * inverse;
    int whole = (int) v;
    return whole > v ? whole - 1 : whole;
  }

  private List<Ring> link(float[] field, double base, double spacing) {
    List<Ring> rings = new ArrayList<>();
    for (boolean open : new boolean[] {true, false}) {
      for (Band band : bands) {
        for (int s = 0; s < band.count; s++) {
          int start = band.starts[s];
          if (next[start] >= 0 && !(open && entered[start])) {
            rings.add(follow(field, base, spacing, start));
          }
        }
      }
    }
    return rings;
  }

  private Ring follow(float[] field, double base, double spacing, int start) {
    double[] x = new double[64];
    double[] y = new double[64];
    int n = 0;
    double inverse = 1 / spacing;
    int edge = start;
    int index = 0;
    boolean closed = false;
    while (edge >= 0) {
      if (n == x.length) {
        x = Arrays.copyOf(x, 2 * n);
        y = Arrays.copyOf(y, 2 * n);
      }
      int k = edge >> 1;
      boolean vertical = (edge & 1) == 1;
      int other = vertical ? k + lattice.columns() : k + 1;
      index = Math.max(floor(field[k], base, inverse), floor(field[other], base, inverse));
      double t = (base + index * spacing - field[k]) / (field[other] - field[k]);
      x[n] = lattice.x(k % lattice.columns()) + (vertical ? 0 : t * lattice.stepMm());
      y[n] = lattice.y(k / lattice.columns()) + (vertical ? t * lattice.stepMm() : 0);
      n++;
      int following = next[edge];
      next[edge] = -1;
      edge = following;
      if (edge == start) {
        closed = true;
        edge = -1;
      }
    }
    return new Ring(index, closed, Arrays.copyOf(x, n), Arrays.copyOf(y, n));
  }
}
