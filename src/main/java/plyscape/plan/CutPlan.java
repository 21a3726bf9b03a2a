package plyscape.plan;

import java.util.List;

/** A plan with programs that were cut in simulation. Immutable. */
public sealed interface CutPlan extends Plan permits PanelPlan, TiledPlan {

  /** Expected times; of several panels their sums. */
  PlanTime time();

  /** What it would take with one cutter more, for a few larger ones. */
  List<CutterEstimate> estimates();

  /** The plan of each panel that is cut. */
  List<PanelPlan> panelPlans();
}
