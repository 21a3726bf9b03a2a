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
import plyscape.machine.Tool;
import plyscape.region.Tiling;

/**
 * Checks that the plies which something is assigned to can bear it: thick enough to hit, and with
 * wood under them.
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
   * @param strict such a ply is a fault
   * @throws JobFault if strict, or if too little wood is left under the deepest cut
   */
  void check(Tiling tiling, boolean strict, Warnings warnings) {
    FloorCheck.require(depths, tiling.exposed().lastKey(), job.allowance());
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
    shortFlutes(tiling, warnings);
  }

  /**
   * Warns of every ply that no cutter can come down to, with code {@code short-flutes}; round-ended
   * ones only cut sculpted faces.
   */
  private void shortFlutes(Tiling tiling, Warnings warnings) {
    double longestMm =
        job.tools().stream()
            .filter(tool -> tool.shape() == Tool.Shape.FLAT || job.surface().sculpted())
            .mapToDouble(Tool::fluteLengthMm)
            .max()
            .orElse(Double.POSITIVE_INFINITY);
    for (int ply : tiling.exposed().keySet()) {
      PlyDepth depth = depths.of(ply);
      if (depth.targetMm() > longestMm) {
        warnings.add(
            "short-flutes",
            String.format(
                Locale.ROOT,
                "it is to be cut to %.3f mm, and the longest flutes have %.2f mm: it won't be"
                    + " reached; list a cutter with longer flutes",
                depth.targetMm(),
                longestMm),
            "ply " + ply + " (" + depth.ply().name() + ")");
      }
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
