package plyscape.cli.shop;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import plyscape.cli.talk.JsonText;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.LeastFloor;
import plyscape.layup.PanelCorners;
import plyscape.layup.PanelPoint;
import plyscape.layup.PlyDepth;
import plyscape.layup.advice.NextMeasurement;
import plyscape.layup.advice.ThinPlyAdvice;

/**
 * What {@code check} found.
 *
 * @param at place at which the plies were judged
 * @param corners what holds of each ply all over the panel; empty when one place was asked for, or
 *     all are the same
 * @param next the measurement by place that would help most, or null
 */
record CheckReport(
    Layup layup,
    CutAllowance allowance,
    Depths depths,
    PanelPoint at,
    List<PanelCorners> corners,
    List<ThinPlyAdvice> advice,
    NextMeasurement next) {

  /** For scripts; names and units as in plan.json. */
  String json() {
    ObjectNode root = JsonText.object("plyscape-check-1");
    root.put("layup", layup.name());
    root.put("thickness_mm", DepthModel.thicknessMm(layup));
    root.put("nominal_mm", DepthModel.nominalThicknessMm(layup));
    root.put("method", allowance.method().name().toLowerCase(Locale.ROOT));
    if (layup.measured().byPlace()) {
      root.putArray("at").add(at.xMm()).add(at.yMm());
    }
    ArrayNode plies = root.putArray("plies");
    for (PlyDepth depth : depths) {
      ply(plies.addObject(), depth);
    }
    ArrayNode list = root.putArray("advice");
    for (ThinPlyAdvice a : advice) {
      advice(list.addObject(), a);
    }
    if (next != null) {
      next(root.putObject("measure_next"));
    }
    return JsonText.of(root);
  }

  private static void advice(ObjectNode node, ThinPlyAdvice a) {
    node.put("ply", a.plyNumber());
    node.put("thickness_mm", a.thicknessMm());
    node.put("tolerance_mm", a.toleranceMm());
    node.put("flatness_mm", a.flatnessMm());
    if (a.best() == null) {
      node.putNull("measure");
      return;
    }
    ObjectNode best = node.putObject("measure");
    best.put("what", a.best().bottomOfPly() == 0 ? "thickness" : "bottom");
    best.put("ply", a.best().bottomOfPly() == 0 ? null : a.best().bottomOfPly());
    best.put("measuring_tolerance_mm", a.best().measuringToleranceMm());
    best.put("needed_mm", a.best().neededMm());
    best.put("helps", a.best().helps());
    best.put("passes", a.best().passes());
    best.put("unreliable_plies", a.best().unreliable());
  }

  private void next(ObjectNode node) {
    node.put("ply", next.plyNumber()).put("where", next.where());
    node.putArray("at").add(next.at().xMm()).add(next.at().yMm());
    node.put("wrong_share", next.before()).put("wrong_share_then", next.after());
  }

  /** Whether a ply is reliable: all over the panel unless one place was asked for. */
  boolean reliable(PlyDepth d) {
    return d.reliable() && (corners.isEmpty() || corners.get(d.ply().number() - 1).reliable());
  }

  /** Least wood that a cut into a ply leaves, likewise; the place only where it matters. */
  LeastFloor floor(PlyDepth d) {
    int number = d.ply().number();
    return corners.isEmpty()
        ? new LeastFloor(depths.floorMm(number), null, d.targetMm())
        : corners.get(number - 1).leastFloor();
  }

  /** Whether {@code minimum_floor} is kept there. */
  boolean floorKept(PlyDepth d) {
    return floor(d).floorMm() >= allowance.minimumFloorMm() - 1e-9;
  }

  private void ply(ObjectNode node, PlyDepth d) {
    int number = d.ply().number();
    node.put("number", number);
    node.put("name", d.ply().name());
    node.put("colour", d.ply().colour());
    node.put("top_mm", d.topMm());
    node.put("bottom_mm", d.bottomMm());
    node.put("mid_mm", d.midMm());
    node.put("target_mm", d.targetMm());
    node.put("needed_mm", d.neededMm());
    node.put("available_mm", d.availableMm());
    node.put("reliable", d.reliable());
    node.put("risk", d.risk());
    node.put("top_tolerance_mm", d.topToleranceMm());
    node.put("bottom_tolerance_mm", d.bottomToleranceMm());
    node.put("needed_top_mm", d.neededTopMm());
    node.put("needed_bottom_mm", d.neededBottomMm());
    node.put("floor_mm", depths.floorMm(number));
    node.put("floor_kept", floorKept(d));
    if (!corners.isEmpty()) {
      PanelCorners all = corners.get(number - 1);
      node.put("needed_worst_mm", all.neededWorstMm());
      node.putArray("worst_at").add(all.worstAt().xMm()).add(all.worstAt().yMm());
      node.put("floor_least_mm", all.leastFloor().floorMm());
      node.putArray("floor_least_at")
          .add(all.leastFloor().at().xMm())
          .add(all.leastFloor().at().yMm());
      node.put("reliable_everywhere", reliable(d));
    }
  }
}
