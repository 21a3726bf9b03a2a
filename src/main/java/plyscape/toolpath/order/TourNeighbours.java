package plyscape.toolpath.order;

import java.util.Arrays;

/** Which items of a tour are near to which, by where they are entered and left now. Immutable. */
final class TourNeighbours {

  private static final int MOST = 50;

  /** Items that begin or end near where each ends; the last list is for the start. */
  final int[][] near;

  /** Items that end near where each begins. */
  final int[][] nearExits;

  TourNeighbours(TourLinks links) {
    int n = links.n;
    near = new int[n + 1][];
    nearExits = new int[n][];
    double[] x = new double[2 * n];
    double[] y = new double[2 * n];
    for (int i = 0; i < n; i++) {
      x[2 * i] = links.inX[i];
      y[2 * i] = links.inY[i];
      x[2 * i + 1] = links.outX[i];
      y[2 * i + 1] = links.outY[i];
    }
    var all = new PointGrid(x, y);
    var exits = new PointGrid(x, y);
    for (int i = 0; i < 2 * n; i++) {
      all.put(i);
      if (i % 2 == 1) {
        exits.put(i);
      }
    }
    for (int i = 0; i < n; i++) {
      near[i] = others(i, all, links.outX[i], links.outY[i]);
      nearExits[i] = others(i, exits, links.inX[i], links.inY[i]);
    }
    near[n] = others(n, all, links.startX(), links.startY());
  }

  private static int[] others(int item, PointGrid grid, double x, double y) {
    int[] found = new int[2 * MOST + 2];
    int count = grid.nearest(x, y, found, new double[found.length]);
    int[] list = new int[count];
    int filled = 0;
    for (int k = 0; k < count && filled < MOST; k++) {
      int other = found[k] / 2;
      if (other != item && !contains(list, filled, other)) {
        list[filled++] = other;
      }
    }
    return Arrays.copyOf(list, filled);
  }

  private static boolean contains(int[] list, int filled, int value) {
    for (int i = 0; i < filled; i++) {
      if (list[i] == value) {
        return true;
      }
    }
    return false;
  }
}
