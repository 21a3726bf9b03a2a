package plyscape.planar;

import java.util.Arrays;
import java.util.List;

/**
 * The nodes where chains end, and around each the half-edges that leave it, counter-clockwise.
 * Half-edge 2c runs along chain c, 2c + 1 against it. Directions are compared exactly. Built in
 * about n steps for n chains; d^2 at a node of d half-edges, of which maps have three or four.
 */
final class NodeTable {

  private final List<Chain> chains;
  private final int[] start;

  /** Half-edges that leave each node, counter-clockwise, and where each node's begin. */
  private final int[] around;

  private final int[] first;
  private final int[] place;

  NodeTable(List<Chain> chains) {
    this.chains = chains;
    int halves = 2 * chains.size();
    LongIds ids = new LongIds(halves);
    start = new int[halves];
    for (int c = 0; c < chains.size(); c++) {
      Chain chain = chains.get(c);
      start[2 * c] = ids.id(LongIds.pair(chain.x[0], chain.y[0]));
      start[2 * c + 1] = ids.id(LongIds.pair(chain.x[chain.last()], chain.y[chain.last()]));
    }
    first = new int[ids.size() + 1];
    for (int h = 0; h < halves; h++) {
      first[start[h] + 1]++;
    }
    for (int n = 0; n < ids.size(); n++) {
      first[n + 1] += first[n];
    }
    around = new int[halves];
    place = new int[halves];
    int[] fill = Arrays.copyOf(first, first.length);
    for (int h = 0; h < halves; h++) {
      around[fill[start[h]]++] = h;
    }
    for (int n = 0; n < ids.size(); n++) {
      sort(first[n], first[n + 1]);
    }
    for (int i = 0; i < halves; i++) {
      place[around[i]] = i;
    }
  }

  int count() {
    return first.length - 1;
  }

  /** The node that a half-edge leaves. */
  int start(int half) {
    return start[half];
  }

  /** The half-edge that leaves the same node next clockwise. */
  int clockwise(int half) {
    int node = start[half];
    int at = place[half];
    return around[at == first[node] ? first[node + 1] - 1 : at - 1];
  }

  /** Insertion sort: nodes have few half-edges. */
  private void sort(int from, int to) {
    for (int i = from + 1; i < to; i++) {
      int half = around[i];
      int k = i;
      while (k > from && before(half, around[k - 1])) {
        around[k] = around[k - 1];
        k--;
      }
      around[k] = half;
    }
  }

  private boolean before(int a, int b) {
    long ax = directionX(a);
    long ay = directionY(a);
    long bx = directionX(b);
    long by = directionY(b);
    boolean aLow = ay < 0 || ay == 0 && ax < 0;
    boolean bLow = by < 0 || by == 0 && bx < 0;
    if (aLow != bLow) {
      return !aLow;
    }
    return ax * by - ay * bx > 0;
  }

  private long directionX(int half) {
    Chain chain = chains.get(half >> 1);
    return (half & 1) == 0
        ? chain.x[1] - chain.x[0]
        : chain.x[chain.last() - 1] - chain.x[chain.last()];
  }

  private long directionY(int half) {
    Chain chain = chains.get(half >> 1);
    return (half & 1) == 0
        ? chain.y[1] - chain.y[0]
        : chain.y[chain.last() - 1] - chain.y[chain.last()];
  }
}
