package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.fault.JobFault;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.layup.Depths;
import plyscape.layup.FloorCheck;
import plyscape.layup.PlyDepth;
import plyscape.region.Tiling;

/**
 * Checks that the plies which something is assigned to can bear it: thick enough to hit, with wood
 * under them, and within reach of a cutter.
 */
final class Assignment {

  private final Job job;
  private final Depths depths;

  Assignment(Job job, Depths depths) {
    this.job = job;
    this.depths = depths;
  }

  /**
   * Warns of every unreliable ply that shows, with code {@code thin-ply}.
   *
   * @param options whether such a ply is a fault, and what is accepted
   * @throws JobFault if strict, if too little wood is left under the deepest cut, or if no cutter
   *     comes down to a ply
   */
  void check(Tiling tiling, PlanOptions options, Warnings warnings) {
    FloorCheck.require(depths, tiling.exposed().lastKey(), job.allowance());
    List<Warning> thin = new ArrayList<>();
    for (int ply : tiling.exposed().keySet()) {
      PlyDepth depth = depths.of(ply);
      if (!depth.reliable()) {
        thin.add(thin(depth));
      }
    }
    if (options.strict() && !thin.isEmpty()) {
      throw new JobFault(
          String.join("; ", thin.stream().map(Warning::message).toList()),
          "--strict allows no unreliable ply");
    }
    thin.forEach(w -> warnings.add(w.code(), w.message(), w.where()));
    cutters(tiling, options, warnings);
  }

  private void cutters(Tiling tiling, PlanOptions options, Warnings warnings) {
    List<PlyDepth> shown = tiling.exposed().keySet().stream().map(depths::of).toList();
    CutterReach reach = new CutterReach(job);
    if (options.previewOnly() || options.accepts(Acceptance.SHORT_FLUTES)) {
      reach.warn(shown, warnings);
    } else {
      reach.require(shown);
    }
  }

  private static Warning thin(PlyDepth depth) {
    String message =
        String.format(
            Locale.ROOT,
            "ply %d (%s) has %.3f mm of clearance on either side of its middle and needs %.3f mm:"
                + " another ply may show; `plyscape check` says what would help",
            depth.ply().number(),
            depth.ply().name(),
            depth.availableMm(),
            depth.neededMm());
    return new Warning("thin-ply", message, "ply " + depth.ply().number());
  }
}
