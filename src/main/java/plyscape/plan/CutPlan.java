package plyscape.plan;

/** A plan with programs that were cut in simulation. Immutable. */
public sealed interface CutPlan extends Plan permits PanelPlan, TiledPlan {

  /** Expected times; of several panels their sums. */
  PlanTime time();
}
