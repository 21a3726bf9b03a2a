package plyscape.toolpath.order;

import java.util.ArrayDeque;

/**
 * Shortens a tour by moving short runs of items elsewhere (Or-opt, also turned round), turning runs
 * round (2-opt) and exchanging neighbouring runs of any length (the one 3-opt move that keeps all
 * directions: it is what helps where paths can't be turned round), never against what must come
 * before what. Only links to near items are tried (neighbour lists; D. Johnson, L. McGeoch 1997).
 * Moves are counted, not timed, so that the outcome is the same everywhere.
 */
final class TourImprove {

  /** Longest run that is moved on its own. */
  private static final int RUN = 3;

  private static final double LEAST_GAIN = 1e-6;

  private final TourLinks links;
  private final TourNeighbours neighbours;
  private final int[] order;
  private final int[] position;
  private final int n;

  /** Items after which something better is looked for. */
  private final ArrayDeque<Integer> queue = new ArrayDeque<>();

  private final boolean[] queued;

  /** What the last move won. */
  private double gain;

  TourImprove(TourLinks links) {
    this.links = links;
    neighbours = new TourNeighbours(links);
    order = links.order;
    position = links.position;
    n = links.n;
    queued = new boolean[n + 1];
  }

  /** Improves until nothing near helps; what that won in all. */
  double all() {
    for (int p = -1; p < n; p++) {
      enqueue(p);
    }
    return run(20 * n + 100);
  }

  /**
   * Has the two items beside a break in the tour looked at, that before position p and that at p.
   */
  void broken(int p) {
    enqueue(p - 1);
    enqueue(p);
  }

  private void enqueue(int p) {
    if (p >= n || p < -1) {
      return;
    }
    int item = p < 0 ? n : order[p];
    if (!queued[item]) {
      queued[item] = true;
      queue.add(item);
    }
  }

  /** Improves from the items that wait on; what that won in all. */
  double run(int mostMoves) {
    double won = 0;
    int moves = 0;
    while (!queue.isEmpty()) {
      int item = queue.poll();
      queued[item] = false;
      int p = item == n ? -1 : position[item];
      int[] touched = moves < mostMoves ? improveAfter(p) : null;
      if (touched == null) {
        continue;
      }
      moves++;
      won += gain;
      enqueue(item == n ? -1 : position[item]);
      for (int at : touched) {
        for (int q = at - 1; q <= at + 1; q++) {
          enqueue(q);
        }
      }
    }
    return won;
  }

  /**
   * Tries to have something else follow position p; the positions at whose ends the tour changed,
   * or null.
   */
  private int[] improveAfter(int p) {
    for (int item : neighbours.near[p < 0 ? n : order[p]]) {
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

  private boolean better(double before, double after) {
    gain = before - after;
    return gain > LEAST_GAIN;
  }

  /**
   * Moves first..last to follow position p, turned round or not, if that is shorter and allowed.
   */
  private boolean moveRun(int first, int last, int p, boolean turned) {
    if (p >= first - 1 && p <= last) {
      return false;
    }
    double old = links.link(first) + links.link(last + 1) + links.link(p + 1);
    boolean later = p > last;
    if (!better(old, moved(first, last, p, turned, true))
        || !better(old, moved(first, last, p, turned, false))
        || turned && !links.canTurn(first, last)
        || !(later
            ? links.canExchange(first, last + 1, p)
            : links.canExchange(p + 1, first, last))) {
      return false;
    }
    if (turned) {
      links.reverse(first, last);
    }
    if (later) {
      links.exchange(first, last + 1, p);
    } else {
      links.exchange(p + 1, first, last);
    }
    return true;
  }

  /** Cost of the three links that come about when first..last follows p. */
  private double moved(int first, int last, int p, boolean turned, boolean least) {
    double closed = last + 1 < n ? links.gap(first - 1, last + 1, least) : 0;
    return turned
        ? closed + links.turnedIn(p, last, least) + links.turnedOut(first, p + 1, least)
        : closed + links.gap(p, first, least) + links.gap(last, p + 1, least);
  }

  /**
   * Has the item at q follow p by exchanging two neighbouring runs, whichever third break is best
   * among the items whose exits are near the entry that p leads to now.
   */
  private int[] exchangeRuns(int p, int q) {
    if (p + 1 >= n || q == p + 1) {
      return null;
    }
    double now = links.link(p + 1);
    if (now - links.gap(p, q, true) <= LEAST_GAIN || now - links.gap(p, q, false) <= LEAST_GAIN) {
      return null;
    }
    for (int item : neighbours.nearExits[order[p + 1]]) {
      int s = position[item];
      // Breaks after i < j < k: the runs i+1..j and j+1..k change places.
      int i = q > p ? Math.min(p, s) : q - 1;
      int j = q > p ? (s >= q ? q - 1 : p) : s;
      int k = q > p ? (s >= q ? s : q - 1) : p;
      boolean ordered = i < j && j < k && (q > p ? s >= q || s < p : s >= q && s < p);
      if (!ordered) {
        continue;
      }
      double old = links.link(i + 1) + links.link(j + 1) + links.link(k + 1);
      if (better(old, exchanged(i, j, k, true))
          && better(old, exchanged(i, j, k, false))
          && links.canExchange(i + 1, j + 1, k)) {
        links.exchange(i + 1, j + 1, k);
        return new int[] {i, i + 1, i + k - j, i + k - j + 1, k, k + 1};
      }
    }
    return null;
  }

  private double exchanged(int i, int j, int k, boolean least) {
    return links.gap(i, j + 1, least)
        + links.gap(k, i + 1, least)
        + (k + 1 < n ? links.gap(j, k + 1, least) : 0);
  }

  /** Turns first..last round if that is shorter and allowed. */
  private boolean turn(int first, int last) {
    if (first >= last) {
      return false;
    }
    double old = links.link(first) + links.link(last + 1);
    if (!better(old, turned(first, last, true))
        || !better(old, turned(first, last, false))
        || !links.canTurn(first, last)) {
      return false;
    }
    links.reverse(first, last);
    return true;
  }

  private double turned(int first, int last, boolean least) {
    return links.turnedIn(first - 1, last, least) + links.turnedOut(first, last + 1, least);
  }
}
