package plyscape.planner.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.layup.Depths;
import plyscape.layup.FloorCheck;
import plyscape.layup.PlyDepth;
import plyscape.layup.PlyShown;
import plyscape.plan.Acceptance;
import plyscape.plan.Landscape;
import plyscape.plan.PlanOptions;
import plyscape.region.Tiling;
import plyscape.text.Template;

/**
 * Checks that the plies which something is assigned to can bear it: thick enough to hit, with wood
 * under them, and within reach of a cutter.
 */
public final class Assignment {

  private final Job job;
  private final Depths depths;
  private final Landscape panel;

  public Assignment(Landscape panel) {
    this.panel = panel;
    this.job = panel.job();
    this.depths = panel.depths();
  }

  /**
   * Warns of every unreliable ply that shows, with code {@code thin-ply}.
   *
   * @param options whether such a ply is a fault, and what is accepted
   * @throws JobFault if strict, if too little wood is left under the deepest cut, or if no cutter
   *     comes down to a ply
   */
  public void check(PlanOptions options, Warnings warnings) {
    floor();
    reliable(options.strict(), warnings);
    cutters(options, warnings);
  }

  /** The part about the wood left under the deepest cut, where it is least. */
  public void floor() {
    int deepest = panel.tiling().exposed().lastKey();
    if (!depths.byPlace()) {
      FloorCheck.require(depths, deepest, job.allowance());
      return;
    }
    // Deeper plies leave less: of two that leave too little the lower one is the one to leave out.
    List<Integer> plies = new ArrayList<>(panel.tiling().exposed().keySet());
    Collections.reverse(plies);
    plies.forEach(
        ply -> FloorCheck.require(depths, ply, depths.of(ply).shown().floor(), job.allowance()));
  }

  /** The part about plies that are hard to hit. */
  public void reliable(boolean strict, Warnings warnings) {
    Tiling tiling = panel.tiling();
    List<Warning> thin = new ArrayList<>();
    for (int ply : tiling.exposed().keySet()) {
      PlyDepth depth = depths.of(ply);
      if (!depth.reliable()) {
        thin.add(thin(depth));
      }
    }
    if (strict && !thin.isEmpty()) {
      throw new JobFault(
          String.join("; ", thin.stream().map(Warning::message).toList()),
          "--strict allows no unreliable ply");
    }
    thin.forEach(w -> warnings.add(w.code(), w.message(), w.where()));
  }

  /** The part about cutters that must come down to the plies that show. */
  public void cutters(PlanOptions options, Warnings warnings) {
    List<PlyDepth> shown = panel.tiling().exposed().keySet().stream().map(depths::of).toList();
    CutterReach reach = new CutterReach(job);
    if (options.previewOnly() || options.accepts(Acceptance.SHORT_FLUTES)) {
      reach.warn(shown, warnings);
    } else {
      reach.require(shown);
    }
  }

  private static Warning thin(PlyDepth depth) {
    String message =
        Template.fill("ply %d (%s) %s", depth.ply().number(), depth.ply().name(), why(depth));
    return new Warning("thin-ply", message, "ply " + depth.ply().number());
  }

  private static String why(PlyDepth depth) {
    String help = ": another ply may show; `plyscape check` says what would help";
    PlyShown shown = depth.shown();
    if (shown == null || depth.neededMm() > depth.availableMm() + 1e-9) {
      return Template.fill(
          "has %.3f mm of clearance on either side of its middle and needs %.3f mm%s",
          depth.availableMm(), depth.neededMm(), help);
    }
    if (shown.neededWorstMm() > depth.availableMm()) {
      return Template.fill(
          "needs up to %.3f mm of clearance, at (%.0f, %.0f), and has about %.3f mm%s",
          shown.neededWorstMm(),
          shown.worstAt().xMm(),
          shown.worstAt().yMm(),
          depth.availableMm(),
          help);
    }
    return Template.fill(
        "isn't sure where sanding doesn't reach, on %.0f %% of its area (sanding_block): as cut it"
            + " lies nearer to the ply above; thicker plies, less sanding or a sponge would help",
        100 * shown.unsandedShare());
  }
}
