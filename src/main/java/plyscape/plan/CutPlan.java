package plyscape.plan;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A plan with programs that were cut in simulation. Immutable. */
public sealed interface CutPlan extends Plan permits PanelPlan, TiledPlan {

  /** What each panel that is cut came to. */
  List<PanelFigures> figures();

  /** Expected times; of several panels their sums. */
  default PlanTime time() {
    return figures().stream().map(PanelFigures::time).reduce(PlanTime.NONE, PlanTime::plus);
  }

  /**
   * What it would take with one cutter more, for a few larger ones: sums over the panels; one on
   * which nothing is cut adds nothing.
   */
  default List<CutterEstimate> estimates() {
    Map<Double, CutterEstimate> byDiameter = new TreeMap<>();
    for (PanelFigures panel : figures()) {
      for (CutterEstimate estimate : panel.estimates()) {
        byDiameter.merge(estimate.tool().diameterMm(), estimate, CutterEstimate::plus);
      }
    }
    return List.copyOf(byDiameter.values());
  }
}
