package plyscape.toolpath.bound;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.toolpath.task.PocketLevel;

/**
 * How the lower bound divides among cutters, for any choice of them: the pockets are rastered once.
 * As {@link LowerBound} a figure of areas alone, without walls, ways and acceleration. Immutable.
 */
public final class CutterShares {

  private final ChainCost chains;
  private final SortedMap<LowerBound.Kind, Integer> kinds;
  private final double cellMm2;
  private final int cutters;

  private CutterShares(LowerBound raster, int cutters) {
    chains = raster.chains();
    kinds = raster.kinds();
    cellMm2 = raster.cellMm2();
    this.cutters = cutters;
  }

  /**
   * Of pockets and cutters, parameters as for {@link LowerBound#seconds}.
   *
   * @param cellMm a third of the smallest cutter of interest is fine enough for a per cent or two
   */
  public static CutterShares of(
      List<PocketLevel> levels, List<Tool> tools, Box carved, double cellMm) {
    return new CutterShares(LowerBound.rastered(levels, tools, carved, cellMm), tools.size());
  }

  /**
   * Seconds by cutter, in their order; 0 for those left out and those that have nothing to do.
   *
   * @param chosen which of the cutters there are
   */
  public double[] seconds(boolean[] chosen) {
    double[] sums = new double[cutters];
    for (Map.Entry<LowerBound.Kind, Integer> entry : kinds.entrySet()) {
      int[] deepest = entry.getKey().deepest().clone();
      for (int t = 0; t < cutters; t++) {
        deepest[t] = chosen[t] ? deepest[t] : -1;
      }
      double[] perMm2 = chains.shares(entry.getKey().target(), deepest);
      for (int t = 0; t < cutters; t++) {
        sums[t] += perMm2[t] * cellMm2 * entry.getValue();
      }
    }
    return sums;
  }
}
