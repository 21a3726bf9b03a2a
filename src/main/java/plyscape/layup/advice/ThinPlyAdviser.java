package plyscape.layup.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.LayerStack;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.layup.PressedPanel;

/** Works out {@link ThinPlyAdvice} by trying changes of a layup, one at a time. */
final class ThinPlyAdviser {

  private final Layup layup;
  private final CutAllowance allowance;
  private final double measuringToleranceMm;
  private final PanelPoint at;

  /**
   * For a place of a panel.
   *
   * @param measuringToleranceMm plus or minus of a measurement for which the layup states none
   */
  ThinPlyAdviser(Layup layup, CutAllowance allowance, double measuringToleranceMm, PanelPoint at) {
    this.layup = layup;
    this.allowance = allowance;
    this.measuringToleranceMm = measuringToleranceMm;
    this.at = at;
  }

  /** Depths at the place if the layup were another. */
  Depths depths(Layup other) {
    return DepthModel.unchecked(other, allowance).at(at);
  }

  ThinPlyAdvice of(PlyDepth depth) {
    int number = depth.ply().number();
    double pressedShare = 2 * depth.availableMm() / depth.ply().thicknessMm();
    double greatest = layup.plies().stream().mapToDouble(Ply::toleranceMm).max().orElse(0);
    return new ThinPlyAdvice(
        number,
        2 * depth.neededMm() / pressedShare,
        greatestPassing(u -> withTolerance(layup, u), greatest, number),
        greatestPassing(f -> layup.withFlatness(f), layup.flatnessMm(), number),
        best(number));
  }

  /**
   * Everything that could still be measured, each with what it would bring to one ply; the panel's
   * thickness first.
   */
  List<ThinPlyAdvice.Measurement> measurements(int plyNumber) {
    PressedPanel pressed = PressedPanel.unchecked(layup);
    double before = depths(layup).of(plyNumber).neededMm();
    int plies = layup.plies().size();
    boolean bottomKnown =
        layup.measured().thicknessMm() != null || layup.measured().bottomsMm().containsKey(plies);
    List<ThinPlyAdvice.Measurement> all = new ArrayList<>();
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
      Depths after = depths(then);
      PlyDepth depth = after.of(plyNumber);
      int unreliable = (int) after.stream().filter(d -> !d.reliable()).count();
      all.add(
          new ThinPlyAdvice.Measurement(
              ply,
              tolerance,
              depth.neededMm(),
              unreliable,
              depth.neededMm() < before - 1e-9,
              depth.reliable()));
    }
    return List.copyOf(all);
  }

  private ThinPlyAdvice.Measurement best(int plyNumber) {
    ThinPlyAdvice.Measurement best = null;
    for (ThinPlyAdvice.Measurement m : measurements(plyNumber)) {
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
  private Double greatestPassing(DoubleFunction<Layup> change, double greatest, int plyNumber) {
    if (!passes(change.apply(0), plyNumber)) {
      return null;
    }
    double low = 0;
    double high = greatest;
    for (int i = 0; i < 60; i++) {
      double mid = (low + high) / 2;
      if (passes(change.apply(mid), plyNumber)) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return low;
  }

  private boolean passes(Layup other, int plyNumber) {
    return depths(other).of(plyNumber).reliable();
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
