package plyscape.toolpath.bound;

import java.util.List;
import plyscape.machine.Tool;

/**
 * The least seconds a mm2 over all chains of cutters and pocket levels that take a place from the
 * top face to its target. Exact, by dynamic programming over the levels; src/contract.md, section
 * 8, {@code lower_bound_s}. Immutable.
 *
 * <p>A link goes from the top face or a level to a deeper level by a cutter that reaches the place
 * there and whose flutes are long enough; it costs one crossing of the place for each stepdown
 * begun.
 */
public final class ChainCost {

  /**
   * A depth that is this share of a step over a whole number of steps doesn't begin another: sums
   * of depths are inexact.
   */
  private static final double STEP_FUZZ = 1e-9;

  private final double[] depthsMm;
  private final List<Tool> tools;
  private final double[] secondsPerMm2;

  /**
   * Prepares for a list of levels and cutters.
   *
   * @param depthsMm rising
   * @param tools in any order
   */
  ChainCost(double[] depthsMm, List<Tool> tools) {
    this.depthsMm = depthsMm.clone();
    this.tools = List.copyOf(tools);
    secondsPerMm2 = tools.stream().mapToDouble(ChainCost::secondsPerMm2).toArray();
  }

  /**
   * Seconds a mm2 at which a cutter clears at best: with the engaged width held to the stepover it
   * newly clears at most D * sqrt(stepover) mm2 a mm of path (references.md section 7, bound 2). A
   * feed for thin bites doesn't better that: at a width of r diameters, up to the stepover, it
   * grows by 1 / (2 sqrt(r - r2)) at most, so that r times it stays under sqrt(stepover).
   */
  public static double secondsPerMm2(Tool tool) {
    return 60 / (Math.sqrt(tool.stepover()) * tool.diameterMm() * tool.feedMmPerMin());
  }

  /** How many cuts a cutter needs for a depth. */
  public static int steps(double depthMm, double stepdownMm) {
    return Math.max(1, (int) Math.ceil(depthMm / stepdownMm - STEP_FUZZ));
  }

  /**
   * Least seconds a mm2, or infinity when no cutter reaches the target.
   *
   * @param target index of the level that the place is cut to
   * @param deepest for each cutter the index of the deepest level in which it reaches the place, -1
   *     for none; it reaches it in all shallower ones too, as pockets are nested
   */
  double least(int target, int[] deepest) {
    double[] best = new double[target + 2];
    for (int to = 0; to <= target; to++) {
      double least = Double.POSITIVE_INFINITY;
      for (int t = 0; t < tools.size(); t++) {
        if (deepest[t] < to || tools.get(t).fluteLengthMm() < depthsMm[to] - STEP_FUZZ) {
          continue;
        }
        for (int from = -1; from < to; from++) {
          double link = depthsMm[to] - (from < 0 ? 0 : depthsMm[from]);
          least =
              Math.min(
                  least,
                  best[from + 1] + steps(link, tools.get(t).stepdownMm()) * secondsPerMm2[t]);
        }
      }
      best[to + 1] = least;
    }
    return best[target + 1];
  }

  /**
   * How the least seconds a mm2 divide among the cutters.
   *
   * @param target as for {@link #least}
   * @param deepest as for {@link #least}
   * @return by cutter; all 0 when none reaches the target
   */
  double[] shares(int target, int[] deepest) {
    double[] seconds = new double[tools.size()];
    if (!Double.isFinite(least(target, deepest))) {
      return seconds;
    }
    for (int to = target; to >= 0; ) {
      double whole = least(to, deepest);
      Link link = link(to, deepest, whole);
      seconds[link.tool()] += link.seconds();
      to = link.from();
    }
    return seconds;
  }

  /** The first link, in the order of the cutters, by which a level comes at its least. */
  private Link link(int to, int[] deepest, double whole) {
    for (int t = 0; t < tools.size(); t++) {
      for (int from = -1; from < to && deepest[t] >= to; from++) {
        double before = from < 0 ? 0 : least(from, deepest);
        double mm = depthsMm[to] - (from < 0 ? 0 : depthsMm[from]);
        double seconds = steps(mm, tools.get(t).stepdownMm()) * secondsPerMm2[t];
        boolean reaches = tools.get(t).fluteLengthMm() >= depthsMm[to] - STEP_FUZZ;
        if (reaches && before + seconds <= whole * (1 + 1e-12)) {
          return new Link(t, from, seconds);
        }
      }
    }
    throw new IllegalStateException("no chain to level " + to);
  }

  private record Link(int tool, int from, double seconds) {}
}
