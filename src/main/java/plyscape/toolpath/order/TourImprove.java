package plyscape.toolpath.order;

import java.util.ArrayDeque;
import java.util.Arrays;

/**
 * Shortens a tour by moving short runs of items elsewhere (Or-opt, also turned round), turning runs
 * round (2-opt) and exchanging neighbouring runs of any length (the one 3-opt move that keeps all
 * directions: it is what helps where paths can't be turned round), never against what must come
 * before what. Only links to near items are tried (neighbour lists; D. Johnson, L. McGeoch 1997).
 * Moves are counted, not timed, so that the outcome is the same everywhere.
 */
final class TourImprove {

  private static final int NEIGHBOURS = 50;

  /** Longest run that is moved on its own. */
  private static final int RUN = 3;

  private static final double LEAST_GAIN = 1e-6;

  private final Tour tour;
  private final int[] order;
  private final int[] position;
  private final int[][] successors;

  // Where each item is entered and left by its way now: looked up far too often to ask the items.
  private final double[] inX;
  private final double[] inY;
  private final double[] outX;
  private final double[] outY;

  /** Cost of the way that leads to each item now; NaN until it is asked for. */
  private final double[] links;

  /** Items that begin or end near where each ends; the last list is for the start. */
  private final int[][] near;

  /** Items that end near where each begins. */
  private final int[][] nearExits;

  private final int n;

  private TourImprove(Tour tour, int[][] successors) {
    this.tour = tour;
    this.successors = successors;
    order = tour.order;
    n = order.length;
    position = new int[n];
    near = new int[n + 1][];
    nearExits = new int[n][];
    inX = new double[n];
    inY = new double[n];
    outX = new double[n];
    outY = new double[n];
    links = new double[n];
    Arrays.fill(links, Double.NaN);
    for (int i = 0; i < n; i++) {
      look(i);
    }
  }

  private void look(int item) {
    inX[item] = tour.inX(item);
    inY[item] = tour.inY(item);
    outX[item] = tour.outX(item);
    outY[item] = tour.outY(item);
  }

  /** Improves until nothing near helps; whether anything did. */
  static boolean run(Tour tour, int[][] successors) {
    return new TourImprove(tour, successors).run();
  }

  private boolean run() {
    for (int p = 0; p < n; p++) {
      position[order[p]] = p;
    }
    findNeighbours();
    var queue = new ArrayDeque<Integer>();
    boolean[] queued = new boolean[n + 1];
    for (int p = -1; p < n; p++) {
      enqueue(p < 0 ? n : order[p], queue, queued);
    }
    int moves = 0;
    int limit = 20 * n + 100;
    while (!queue.isEmpty() && moves < limit) {
      int item = queue.poll();
      queued[item] = false;
      int p = item == n ? -1 : position[item];
      int[] touched = improveAfter(p);
      if (touched == null) {
        continue;
      }
      moves++;
      enqueue(item, queue, queued);
      for (int at : touched) {
        for (int q = at - 1; q <= at + 1; q++) {
          if (q >= -1 && q < n) {
            enqueue(q < 0 ? n : order[q], queue, queued);
          }
        }
      }
    }
    return moves > 0;
  }

  private static void enqueue(int item, ArrayDeque<Integer> queue, boolean[] queued) {
    if (!queued[item]) {
      queued[item] = true;
      queue.add(item);
    }
  }

  private void findNeighbours() {
    double[] x = new double[2 * n];
    double[] y = new double[2 * n];
    for (int i = 0; i < n; i++) {
      x[2 * i] = inX[i];
      y[2 * i] = inY[i];
      x[2 * i + 1] = outX[i];
      y[2 * i + 1] = outY[i];
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
      near[i] = others(i, all, outX[i], outY[i]);
      nearExits[i] = others(i, exits, inX[i], inY[i]);
    }
    near[n] = others(n, all, tour.startX, tour.startY);
  }

  private static int[] others(int item, PointGrid grid, double x, double y) {
    int[] found = new int[2 * NEIGHBOURS + 2];
    int count = grid.nearest(x, y, found, new double[found.length]);
    int[] list = new int[count];
    int filled = 0;
    for (int k = 0; k < count && filled < NEIGHBOURS; k++) {
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

  /** Cost of the way that leads to the entry at q now (n: nowhere, no travel). */
  private double link(int q) {
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
  private double gap(int p, int q, boolean least) {
    if (q >= n) {
      return 0;
    }
    int to = order[q];
    return leap(p, to, inX[to], inY[to], least);
  }

  private double leap(int p, int to, double x, double y, boolean least) {
    int from = p < 0 ? -1 : order[p];
    double fromX = p < 0 ? tour.startX : outX[from];
    double fromY = p < 0 ? tour.startY : outY[from];
    return least
        ? tour.leastCost(from, fromX, fromY, to, x, y)
        : tour.cost(from, fromX, fromY, to, x, y);
  }

  /**
   * Tries to have something else follow position p; the positions at whose ends the tour changed,
   * or null.
   */
  private int[] improveAfter(int p) {
    for (int item : near[p < 0 ? n : order[p]]) {
      int q = position[item];
      for (int run = 1; run <= RUN; run++) {
        if (q + run <= n && moveRun(q, q + run - 1, p, false)) {
          return new int[] {p, p + 1, q, q + run, p - run, p + run};
        }
        if (q - run + 1 >= 0 && moveRun(q - run + 1, q, p, true)) {
          return new int[] {p, p + 1, q, q - run, q + 1, p - run, p + run};
        }
      }
      if (q != p && (q > p ? turn(p + 1, q) : turn(q + 1, p))) {
        return new int[] {p, p + 1, q, q + 1};
      }
      int[] ends = exchangeRuns(p, q);
      if (ends != null) {
        return ends;
      }
    }
    return null;
  }

  /**
   * Moves first..last to follow position p, turned round or not, if that is shorter and allowed.
   */
  private boolean moveRun(int first, int last, int p, boolean turned) {
    if (p >= first - 1 && p <= last) {
      return false;
    }
    double old = link(first) + link(last + 1) + link(p + 1);
    if (moved(first, last, p, turned, true) >= old - LEAST_GAIN
        || moved(first, last, p, turned, false) >= old - LEAST_GAIN
        || turned && !canTurn(first, last)
        || !mayMove(first, last, p)) {
      return false;
    }
    if (turned) {
      reverse(first, last);
    }
    // A move is the exchange of two neighbouring blocks: turn both round, then the whole.
    if (p > last) {
      exchange(first, last + 1, p);
    } else {
      exchange(p + 1, first, last);
    }
    return true;
  }

  /** Cost of the three links that come about when first..last follows p. */
  private double moved(int first, int last, int p, boolean turned, boolean least) {
    double closed = last + 1 < n ? gap(first - 1, last + 1, least) : 0;
    return turned
        ? closed + turnedIn(p, last, least) + turnedOut(first, p + 1, least)
        : closed + gap(p, first, least) + gap(last, p + 1, least);
  }

  /**
   * Has the item at q follow p by exchanging two neighbouring runs, whichever third break is best
   * among the items whose exits are near the entry that p leads to now.
   */
  private int[] exchangeRuns(int p, int q) {
    if (p + 1 >= n || q == p + 1) {
      return null;
    }
    double now = link(p + 1);
    if (now - gap(p, q, true) <= LEAST_GAIN || now - gap(p, q, false) <= LEAST_GAIN) {
      return null;
    }
    for (int item : nearExits[order[p + 1]]) {
      int s = position[item];
      // Breaks after i < j < k: the runs i+1..j and j+1..k change places.
      int i = q > p ? Math.min(p, s) : q - 1;
      int j = q > p ? (s >= q ? q - 1 : p) : s;
      int k = q > p ? (s >= q ? s : q - 1) : p;
      boolean ordered = i < j && j < k && (q > p ? s >= q || s < p : s >= q && s < p);
      if (!ordered) {
        continue;
      }
      double old = link(i + 1) + link(j + 1) + link(k + 1);
      if (exchanged(i, j, k, true) < old - LEAST_GAIN
          && exchanged(i, j, k, false) < old - LEAST_GAIN
          && mayMove(i + 1, j, k)) {
        exchange(i + 1, j + 1, k);
        return new int[] {i, i + 1, i + k - j, i + k - j + 1, k, k + 1};
      }
    }
    return null;
  }

  private double exchanged(int i, int j, int k, boolean least) {
    return gap(i, j + 1, least) + gap(k, i + 1, least) + (k + 1 < n ? gap(j, k + 1, least) : 0);
  }

  /** Turns first..last round if that is shorter and allowed. */
  private boolean turn(int first, int last) {
    if (first >= last) {
      return false;
    }
    double old = link(first) + link(last + 1);
    if (turnedIn(first - 1, last, true) + turnedOut(first, last + 1, true) >= old - LEAST_GAIN
        || turnedIn(first - 1, last, false) + turnedOut(first, last + 1, false) >= old - LEAST_GAIN
        || !canTurn(first, last)) {
      return false;
    }
    reverse(first, last);
    return true;
  }

  /**
   * From the exit at p to where the item at q leaves now, which is where it would begin if turned
   * round.
   */
  private double turnedIn(int p, int q, boolean least) {
    int to = order[q];
    return leap(p, to, outX[to], outY[to], least);
  }

  private double turnedOut(int p, int q, boolean least) {
    if (q >= n) {
      return 0;
    }
    int from = order[p];
    int to = order[q];
    return least
        ? tour.leastCost(from, inX[from], inY[from], to, inX[to], inY[to])
        : tour.cost(from, inX[from], inY[from], to, inX[to], inY[to]);
  }

  private boolean canTurn(int first, int last) {
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

  private boolean mayMove(int first, int last, int p) {
    for (int q = first; q <= last; q++) {
      if (p > last) {
        for (int after : successors[order[q]]) {
          if (position[after] > last && position[after] <= p) {
            return false;
          }
        }
      } else {
        for (int before : tour.items.get(order[q]).after()) {
          if (position[before] > p && position[before] < first) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private void reverse(int first, int last) {
    for (int p = first; p <= last; p++) {
      if (tour.items.get(order[p]).kind() == TourItem.Kind.EITHER_WAY) {
        tour.way[order[p]] = 1 - tour.way[order[p]];
        look(order[p]);
      }
    }
    flip(first, last);
    place(first, last);
  }

  private void exchange(int first, int second, int end) {
    flip(first, second - 1);
    flip(second, end);
    flip(first, end);
    place(first, end);
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
