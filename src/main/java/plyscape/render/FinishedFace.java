package plyscape.render;

import plyscape.layup.PlyDepth;
import plyscape.plan.Plan;

/** The surface after cutting and sanding, mm below the panel's first top face, positive down. */
final class FinishedFace {

  private FinishedFace() {}

  /**
   * Where a ply shows: its target depth and what the sanding takes. Ply 0, the border, is left
   * uncut like an uncut top ply.
   */
  static double depthMm(Plan plan, int plyNumber) {
    double sanding = plan.job().allowance().sandingMm();
    return plyNumber == 0 ? sanding : depth(plan, plyNumber).targetMm() + sanding;
  }

  /** The depths of a ply by its number. */
  static PlyDepth depth(Plan plan, int plyNumber) {
    return plan.depths().get(plyNumber - 1);
  }
}
