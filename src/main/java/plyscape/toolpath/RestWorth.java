package plyscape.toolpath;

import java.util.Arrays;

/**
 * Leaves small patches to the next smaller cutter: getting to a patch costs about as long with
 * either, so the larger one pays only where its faster clearing makes up for it.
 */
final class RestWorth {

  /** What one more place costs: lift, way and coming down, s. */
  private static final double VISIT_S = 0.8;

  private final Lattice lattice;
  private int[] queue = new int[1 << 12];

  RestWorth(Lattice lattice) {
    this.lattice = lattice;
  }

  /**
   * Takes patches of wanted nodes that are smaller than an area out of a pass; they go on standing.
   *
   * @param state of each node, see {@link RingCover}
   * @param leastMm2 smallest patch worth a visit
   * @param skipped marks the nodes taken out
   * @return wanted nodes that stay
   */
  int drop(byte[] state, double leastMm2, boolean[] skipped) {
    int least = (int) Math.ceil(leastMm2 / lattice.nodeAreaMm2());
    boolean[] seen = new boolean[state.length];
    int stay = 0;
    for (int node = 0; node < state.length; node++) {
      if ((state[node] & RingCover.WANTED) != 0 && !seen[node]) {
        int count = flood(node, state, seen);
        if (count < least) {
          for (int q = 0; q < count; q++) {
            state[queue[q]] = RingCover.STANDING;
            skipped[queue[q]] = true;
          }
        } else {
          stay += count;
        }
      }
    }
    return stay;
  }

  /** Marks the nodes of patches smaller than an area as {@link RingCover#SMALL}. */
  void mark(byte[] state, double smallMm2) {
    int small = (int) Math.ceil(smallMm2 / lattice.nodeAreaMm2());
    boolean[] seen = new boolean[state.length];
    for (int node = 0; node < state.length; node++) {
      if ((state[node] & RingCover.WANTED) != 0 && !seen[node]) {
        int count = flood(node, state, seen);
        for (int q = 0; count < small && q < count; q++) {
          state[queue[q]] |= RingCover.SMALL;
        }
      }
    }
  }

  private int flood(int start, byte[] state, boolean[] seen) {
    int columns = lattice.columns();
    int head = 0;
    int tail = 0;
    queue[tail++] = start;
    seen[start] = true;
    while (head < tail) {
      int node = queue[head++];
      if (tail + 8 > queue.length) {
        queue = Arrays.copyOf(queue, 2 * queue.length);
      }
      for (int dj = -columns; dj <= columns; dj += columns) {
        for (int di = -1; di <= 1; di++) {
          int next = node + dj + di;
          if (!seen[next] && (state[next] & RingCover.WANTED) != 0) {
            seen[next] = true;
            queue[tail++] = next;
          }
        }
      }
    }
    return tail;
  }

  /**
   * The smallest patch that pays, mm2.
   *
   * @param rateMm2PerS the cutter's clearing rate
   * @param nextRateMm2PerS that of the next smaller one, for the same depth
   */
  static double leastMm2(double rateMm2PerS, double nextRateMm2PerS) {
    double gain = 1 / nextRateMm2PerS - 1 / rateMm2PerS;
    return gain <= 0 ? Double.POSITIVE_INFINITY : VISIT_S / gain;
  }
}
