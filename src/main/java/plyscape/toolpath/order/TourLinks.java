package plyscape.toolpath.order;

import java.util.Arrays;

/**
 * A tour under change: where each item stands, what the ways between neighbours cost, which
 * stretches may be moved or turned round without going against what must come before what, and the
 * changes made since a mark, so that they can be taken back.
 */
final class TourLinks {

  private final Tour tour;
  private final int[][] successors;

  /** Items in order, those of the tour. */
  final int[] order;

  /** Position of each item. */
  final int[] position;

  // Where each item is entered and left by its way now: looked up far too often to ask the items.
  final double[] inX;
  final double[] inY;
  final double[] outX;
  final double[] outY;

  /** How many items there are. */
  final int n;

  /** Cost of the way that leads to each item now; NaN until it is asked for. */
  private final double[] links;

  /** Exchanges and turns made, three numbers each; the last is -1 for a turn. */
  private int[] changes = new int[96];

  private int changed;

  TourLinks(Tour tour, int[][] successors) {
    this.tour = tour;
    this.successors = successors;
    order = tour.order;
    n = order.length;
    position = new int[n];
    inX = new double[n];
    inY = new double[n];
    outX = new double[n];
    outY = new double[n];
    links = new double[n];
    Arrays.fill(links, Double.NaN);
    for (int p = 0; p < n; p++) {
      position[order[p]] = p;
      look(p);
    }
  }

  private void look(int item) {
    inX[item] = tour.inX(item);
    inY[item] = tour.inY(item);
    outX[item] = tour.outX(item);
    outY[item] = tour.outY(item);
  }

  /** Where the tour starts, X. */
  double startX() {
    return tour.startX;
  }

  /** Where the tour starts, Y. */
  double startY() {
    return tour.startY;
  }

  /** Cost of the way that leads to the entry at q now (n: nowhere, no travel). */
  double link(int q) {
    if (q >= n) {
      return 0;
    }
    int item = order[q];
    if (Double.isNaN(links[item])) {
      links[item] = gap(q - 1, q, false);
    }
    return links[item];
  }

  /**
   * Cost from the exit at p (-1: the start) to the entry at q (n: nowhere, no travel).
   *
   * @param least whether a cost that is surely not too high will do
   */
  double gap(int p, int q, boolean least) {
    if (q >= n) {
      return 0;
    }
    int to = order[q];
    return leap(p, to, inX[to], inY[to], least);
  }

  /**
   * From the exit at p to where the item at q leaves now, which is where it would begin if turned
   * round.
   */
  double turnedIn(int p, int q, boolean least) {
    int to = order[q];
    return leap(p, to, outX[to], outY[to], least);
  }

  private double leap(int p, int to, double x, double y, boolean least) {
    int from = p < 0 ? -1 : order[p];
    double fromX = p < 0 ? tour.startX : outX[from];
    double fromY = p < 0 ? tour.startY : outY[from];
    return least
        ? tour.leastCost(from, fromX, fromY, to, x, y)
        : tour.cost(from, fromX, fromY, to, x, y);
  }

  /** From where the item at p begins now to the entry at q (n: nowhere). */
  double turnedOut(int p, int q, boolean least) {
    if (q >= n) {
      return 0;
    }
    int from = order[p];
    int to = order[q];
    return least
        ? tour.leastCost(from, inX[from], inY[from], to, inX[to], inY[to])
        : tour.cost(from, inX[from], inY[from], to, inX[to], inY[to]);
  }

  /** Whether first..last can be run the other way round. */
  boolean canTurn(int first, int last) {
    for (int p = first; p <= last; p++) {
      if (tour.items.get(order[p]).kind() == TourItem.Kind.PATH) {
        return false;
      }
      for (int after : successors[order[p]]) {
        if (position[after] <= last) {
          return false;
        }
      }
    }
    return true;
  }

  /** Whether the neighbouring runs first..second - 1 and second..end may change places. */
  boolean canExchange(int first, int second, int end) {
    // Asked of the shorter run.
    if (second - first <= end - second) {
      for (int p = first; p < second; p++) {
        for (int after : successors[order[p]]) {
          if (position[after] >= second && position[after] <= end) {
            return false;
          }
        }
      }
    } else {
      for (int p = second; p <= end; p++) {
        for (int before : tour.items.get(order[p]).after()) {
          if (position[before] >= first && position[before] < second) {
            return false;
          }
        }
      }
    }
    return true;
  }

  /** Runs first..last the other way round. */
  void reverse(int first, int last) {
    for (int p = first; p <= last; p++) {
      if (tour.items.get(order[p]).kind() == TourItem.Kind.EITHER_WAY) {
        tour.way[order[p]] = 1 - tour.way[order[p]];
        look(order[p]);
      }
    }
    flip(first, last);
    place(first, last);
    note(first, last, -1);
  }

  /** Has the neighbouring runs first..second - 1 and second..end change places. */
  void exchange(int first, int second, int end) {
    flip(first, second - 1);
    flip(second, end);
    flip(first, end);
    place(first, end);
    note(first, second, end);
  }

  private void note(int a, int b, int c) {
    if (changed + 3 > changes.length) {
      changes = Arrays.copyOf(changes, 2 * changes.length);
    }
    changes[changed++] = a;
    changes[changed++] = b;
    changes[changed++] = c;
  }

  /** From here on changes can be taken back. */
  void mark() {
    changed = 0;
  }

  /** Takes back all changes since the mark. */
  void back() {
    int last = changed;
    while (last > 0) {
      last -= 3;
      int first = changes[last];
      int second = changes[last + 1];
      int end = changes[last + 2];
      if (end < 0) {
        reverse(first, second);
      } else {
        exchange(first, first + end - second + 1, end);
      }
    }
    changed = 0;
  }

  private void flip(int first, int last) {
    for (int a = first, b = last; a < b; a++, b--) {
      int t = order[a];
      order[a] = order[b];
      order[b] = t;
    }
  }

  private void place(int first, int last) {
    for (int p = first; p <= last; p++) {
      position[order[p]] = p;
      links[order[p]] = Double.NaN;
    }
    if (last + 1 < n) {
      links[order[last + 1]] = Double.NaN;
    }
  }
}
