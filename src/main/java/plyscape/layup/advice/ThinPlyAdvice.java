package plyscape.layup.advice;

import java.util.ArrayList;
import java.util.List;
import plyscape.layup.CutAllowance;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.layup.PlyDepth;

/**
 * What would make an unreliable ply reliable, in numbers, one change at a time with all else as it
 * is; and what measuring the panel would gain. Lengths in mm. Immutable.
 *
 * @param plyNumber the unreliable ply
 * @param thicknessMm nominal thickness that it would need. Exact as long as nothing was measured:
 *     the need doesn't depend on the thickness then
 * @param toleranceMm greatest tolerance, asked of every ply alike (those that are better stay as
 *     they are), at which it would pass, or null when even exact plies wouldn't do
 * @param flatnessMm greatest flatness error at which it would pass, or null when even a flat panel
 *     wouldn't do
 * @param best the single measurement after which this ply's clearance is best, or null when nothing
 *     is left to measure
 */
public record ThinPlyAdvice(
    int plyNumber, double thicknessMm, Double toleranceMm, Double flatnessMm, Measurement best) {

  /**
   * One thing to measure, and what it would bring if the outcome is as expected.
   *
   * @param bottomOfPly the ply whose bottom is measured, or 0 for the panel's thickness
   * @param measuringToleranceMm plus or minus assumed of the measurement
   * @param neededMm needed clearance of the ply in question afterwards
   * @param unreliable plies of the layup that would still be unreliable afterwards
   * @param helps whether it lowers the ply's need at all
   * @param passes whether the ply in question would then be reliable
   */
  public record Measurement(
      int bottomOfPly,
      double measuringToleranceMm,
      double neededMm,
      int unreliable,
      boolean helps,
      boolean passes) {}

  /**
   * Advice for each ply that is unreliable at a place of the panel, top to bottom.
   *
   * @param measuringToleranceMm plus or minus of a measurement for which the layup states none
   */
  public static List<ThinPlyAdvice> of(
      Layup layup, CutAllowance allowance, double measuringToleranceMm, PanelPoint at) {
    List<ThinPlyAdvice> all = new ArrayList<>();
    ThinPlyAdviser adviser = new ThinPlyAdviser(layup, allowance, measuringToleranceMm, at);
    for (PlyDepth depth : adviser.depths(layup)) {
      if (!depth.reliable()) {
        all.add(adviser.of(depth));
      }
    }
    return List.copyOf(all);
  }
}
