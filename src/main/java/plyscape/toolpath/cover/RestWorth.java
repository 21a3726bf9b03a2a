package plyscape.toolpath.cover;

import java.util.Arrays;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Lattice;

/**
 * Leaves small patches to the next smaller cutter: getting to a patch costs about as long with
 * either, so the larger one pays only where its faster clearing makes up for it.
 */
public final class RestWorth {

  /** What one more place costs: lift, way and coming down, s. */
  private static final double VISIT_S = 0.8;

  private final Lattice lattice;

  public RestWorth(Lattice lattice) {
    this.lattice = lattice;
  }

  /**
   * Takes patches of wanted nodes that are smaller than an area out of a pass; they go on standing.
   *
   * @param state of each node, see {@link RingCover}
   * @param where blocks outside which none is wanted
   * @param leastMm2 smallest patch worth a visit
   * @param skipped marks the nodes taken out
   * @return wanted nodes that stay
   */
  public int drop(byte[] state, CoarseMap where, double leastMm2, boolean[] skipped) {
    int least = (int) Math.ceil(leastMm2 / lattice.nodeAreaMm2());
    Patches patches = Patches.wanted(lattice, state, where);
    int stay = 0;
    for (int run = 0; run < patches.runs(); run++) {
      int from = patches.first(run);
      int to = patches.end(run);
      if (patches.nodes(run) < least) {
        Arrays.fill(state, from, to, RingCover.STANDING);
        Arrays.fill(skipped, from, to, true);
      } else {
        stay += to - from;
      }
    }
    return stay;
  }

  /** Marks the nodes of patches smaller than an area as {@link RingCover#SMALL}. */
  public void mark(byte[] state, CoarseMap where, double smallMm2) {
    int small = (int) Math.ceil(smallMm2 / lattice.nodeAreaMm2());
    Patches patches = Patches.wanted(lattice, state, where);
    for (int run = 0; run < patches.runs(); run++) {
      for (int node = patches.first(run);
          patches.nodes(run) < small && node < patches.end(run);
          node++) {
        state[node] |= RingCover.SMALL;
      }
    }
  }

  /**
   * The smallest patch that pays, mm2.
   *
   * @param rateMm2PerS the cutter's clearing rate
   * @param nextRateMm2PerS that of the next smaller one, for the same depth
   */
  public static double leastMm2(double rateMm2PerS, double nextRateMm2PerS) {
    double gain = 1 / nextRateMm2PerS - 1 / rateMm2PerS;
    return gain <= 0 ? Double.POSITIVE_INFINITY : VISIT_S / gain;
  }
}
