package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Contours of a field at evenly spaced values, by marching squares with linear interpolation along lattice edges. The
 * spacing must exceed one and a half lattice steps and the field be nowhere steeper than 1, so that no square is crossed
 * by two of them. Where a saddle is crossed the mean of the corners decides. Exact for planes.
 */
final class RingTracer {

  private final Lattice lattice;
  private final int[] next;
  private final boolean[] entered;

  /** Holds the working arrays for one lattice; not for several threads. */
  RingTracer(Lattice lattice) {
    this.lattice = lattice;
    next = new int[2 * lattice.size()];
    entered = new boolean[2 * lattice.size()];
  }

  /**
   * The contours at base, base + spacing, ... up to a highest index.
   *
   * @param field values at the nodes
   * @param base value of index 0, mm
   * @param spacing mm between indices
   * @param lowest first index wanted
   * @param highest last index wanted
   * @param mask squares (by their lower left node) to look at, or null for all; contours end at its rim
   */
  List<Ring> trace(float[] field, double base, double spacing, int lowest, int highest, boolean[] mask) {
    Arrays.fill(next, -1);
    Arrays.fill(entered, false);
    int columns = lattice.columns();
    int[] starts = new int[1024];
    int count = 0;
    double inverse = 1 / spacing;
    for (int j = 0; j < lattice.rows() - 1; j++) {
      int row = j * columns;
      for (int i = 0; i < columns - 1; i++) {
        int k = row + i;
        if (mask != null && !mask[k]) {
          continue;
        }
        int a = floor(field[k], base, inverse);
        int b = floor(field[k + 1], base, inverse);
        int c = floor(field[k + columns + 1], base, inverse);
        int d = floor(field[k + columns], base, inverse);
        if (a == b && b == c && c == d) {
          continue;
        }
        int top = Math.max(Math.max(a, b), Math.max(c, d));
        if (top < lowest || top > highest) {
          continue;
        }
        if (count + 2 > starts.length) {
          starts = Arrays.copyOf(starts, starts.length * 2);
        }
        int kind = (a == top ? 1 : 0) | (b == top ? 2 : 0) | (c == top ? 4 : 0) | (d == top ? 8 : 0);
        count = square(k, kind, field, base + top * spacing, starts, count);
      }
    }
    return link(field, base, spacing, starts, count);
  }

  private static int floor(float value, double base, double inverse) {
    return (int) Math.floor((value - base) * inverse);
  }

  /** Adds the one or two pieces of a square, from edge to edge with the high corners on the left. */
  private int square(int k, int kind, float[] field, double level, int[] starts, int count) {
    int columns = lattice.columns();
    int south = 2 * k;
    int west = 2 * k + 1;
    int north = 2 * (k + columns);
    int east = 2 * (k + 1) + 1;
    boolean joined =
        (field[k] + (double) field[k + 1] + field[k + columns] + field[k + columns + 1]) / 4 >= level;
    switch (kind) {
      case 1 -> count = add(south, west, starts, count);
      case 2 -> count = add(east, south, starts, count);
      case 3 -> count = add(east, west, starts, count);
      case 4 -> count = add(north, east, starts, count);
      case 5 -> {
        count = add(south, joined ? east : west, starts, count);
        count = add(north, joined ? west : east, starts, count);
      }
      case 6 -> count = add(north, south, starts, count);
      case 7 -> count = add(north, west, starts, count);
      case 8 -> count = add(west, north, starts, count);
      case 9 -> count = add(south, north, starts, count);
      case 10 -> {
        count = add(east, joined ? north : south, starts, count);
        count = add(west, joined ? south : north, starts, count);
      }
      case 11 -> count = add(east, north, starts, count);
      case 12 -> count = add(west, east, starts, count);
      case 13 -> count = add(south, east, starts, count);
      case 14 -> count = add(west, south, starts, count);
      default -> throw new IllegalStateException("square " + kind);
    }
    return count;
  }

  private int add(int from, int to, int[] starts, int count) {
    next[from] = to;
    entered[to] = true;
    starts[count] = from;
    return count + 1;
  }

  private List<Ring> link(float[] field, double base, double spacing, int[] starts, int count) {
    List<Ring> rings = new ArrayList<>();
    for (int s = 0; s < count; s++) {
      if (next[starts[s]] >= 0 && !entered[starts[s]]) {
        rings.add(follow(field, base, spacing, starts[s]));
      }
    }
    for (int s = 0; s < count; s++) {
      if (next[starts[s]] >= 0) {
        rings.add(follow(field, base, spacing, starts[s]));
      }
    }
    return rings;
  }

  private Ring follow(float[] field, double base, double spacing, int start) {
    double[] x = new double[64];
    double[] y = new double[64];
    int n = 0;
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
      index = Math.max(floor(field[k], base, 1 / spacing), floor(field[other], base, 1 / spacing));
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
