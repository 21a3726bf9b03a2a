package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.DoubleFunction;

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
   * Advice for each unreliable ply, top to bottom.
   *
   * @param measuringToleranceMm plus or minus of a measurement for which the layup states none
   */
  public static List<ThinPlyAdvice> of(
      Layup layup, CutAllowance allowance, double measuringToleranceMm) {
    List<ThinPlyAdvice> all = new ArrayList<>();
    for (PlyDepth depth : DepthModel.unchecked(layup, allowance)) {
      if (!depth.reliable()) {
        all.add(of(layup, allowance, measuringToleranceMm, depth));
      }
    }
    return List.copyOf(all);
  }

  private static ThinPlyAdvice of(
      Layup layup, CutAllowance allowance, double measuring, PlyDepth depth) {
    int number = depth.ply().number();
    double pressedShare = 2 * depth.availableMm() / depth.ply().thicknessMm();
    double greatest = layup.plies().stream().mapToDouble(Ply::toleranceMm).max().orElse(0);
    return new ThinPlyAdvice(
        number,
        2 * depth.neededMm() / pressedShare,
        greatestPassing(u -> withTolerance(layup, u), greatest, allowance, number),
        greatestPassing(f -> layup.withFlatness(f), layup.flatnessMm(), allowance, number),
        best(layup, allowance, measuring, number));
  }

  /**
   * Everything that could still be measured, each with what it would bring to one ply; the panel's
   * thickness first.
   */
  public static List<Measurement> measurements(
      Layup layup, CutAllowance allowance, double measuringToleranceMm, int plyNumber) {
    PressedPanel pressed = PressedPanel.unchecked(layup);
    double before = DepthModel.unchecked(layup, allowance).of(plyNumber).neededMm();
    int plies = layup.plies().size();
    boolean bottomKnown =
        layup.measured().thicknessMm() != null || layup.measured().bottomsMm().containsKey(plies);
    List<Measurement> all = new ArrayList<>();
    for (int ply = 0; ply < plies; ply++) {
      boolean thickness = ply == 0;
      if (thickness ? bottomKnown : layup.measured().bottomsMm().containsKey(ply)) {
        continue;
      }
      double stated =
          thickness
              ? layup.measured().thicknessToleranceMm()
              : layup.measured().bottomsToleranceMm();
      double tolerance = stated > 0 ? stated : measuringToleranceMm;
      double expected = pressed.depthMm(LayerStack.bottomOf(thickness ? plies : ply));
      Layup then =
          thickness
              ? layup.withThickness(expected, tolerance)
              : withBottom(layup, ply, expected, tolerance);
      Depths after = DepthModel.unchecked(then, allowance);
      PlyDepth depth = after.of(plyNumber);
      int unreliable = (int) after.stream().filter(d -> !d.reliable()).count();
      all.add(
          new Measurement(
              ply,
              tolerance,
              depth.neededMm(),
              unreliable,
              depth.neededMm() < before - 1e-9,
              depth.reliable()));
    }
    return List.copyOf(all);
  }

  private static Measurement best(
      Layup layup, CutAllowance allowance, double measuring, int plyNumber) {
    Measurement best = null;
    for (Measurement m : measurements(layup, allowance, measuring, plyNumber)) {
      boolean better =
          best == null
              || m.neededMm() < best.neededMm() - 1e-9
              || (m.neededMm() < best.neededMm() + 1e-9 && m.unreliable() < best.unreliable());
      best = better ? m : best;
    }
    return best;
  }

  /**
   * The need grows with every tolerance, so that the greatest value that passes is found by
   * halving.
   */
  private static Double greatestPassing(
      DoubleFunction<Layup> change, double greatest, CutAllowance allowance, int plyNumber) {
    if (!passes(change.apply(0), allowance, plyNumber)) {
      return null;
    }
    double low = 0;
    double high = greatest;
    for (int i = 0; i < 60; i++) {
      double mid = (low + high) / 2;
      if (passes(change.apply(mid), allowance, plyNumber)) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return low;
  }

  private static boolean passes(Layup layup, CutAllowance allowance, int plyNumber) {
    return DepthModel.unchecked(layup, allowance).of(plyNumber).reliable();
  }

  private static Layup withTolerance(Layup l, double most) {
    List<Ply> plies =
        l.plies().stream()
            .map(
                p ->
                    new Ply(
                        p.number(),
                        p.name(),
                        p.rgb(),
                        p.thicknessMm(),
                        Math.min(p.toleranceMm(), most),
                        p.grainDeg(),
                        p.wood()))
            .toList();
    return l.withPlies(plies);
  }

  private static Layup withBottom(Layup l, int ply, double depth, double tolerance) {
    SortedMap<Integer, Double> bottoms = new TreeMap<>(l.measured().bottomsMm());
    bottoms.put(ply, depth);
    return l.withBottoms(bottoms, tolerance);
  }
}
