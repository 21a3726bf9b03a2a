package plyscape.planner.check;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.machine.Tool;
import plyscape.text.Template;

/**
 * Whether cutters come down to the plies that are cut: flutes must be as long as a ply is deep, and
 * no cutter may be run deeper than it sticks out of its holder. Only flat cutters make floors;
 * round-ended ones count where faces are sculpted.
 */
public final class CutterReach {

  /** What is too short. */
  private record Shortage(String code, String what, String where, String cure) {}

  private final List<Tool> cutters;

  public CutterReach(Job job) {
    cutters =
        job.tools().stream()
            .filter(tool -> tool.shape() == Tool.Shape.FLAT || job.surface().sculpted())
            .toList();
  }

  /**
   * Refuses plies that no cutter's flutes reach, and cutters that stick out too little.
   *
   * @param plies those that are cut, top to bottom
   * @throws JobFault with the first shortage
   */
  public void require(List<PlyDepth> plies) {
    for (Shortage shortage : shortages(plies)) {
      throw new JobFault(
          shortage.where() + ": " + shortage.what(),
          shortage.cure() + ", or accept it with --accept-short-flutes");
    }
  }

  /** Warns of the same, with codes {@code short-flutes} and {@code short-stickout}. */
  void warn(List<PlyDepth> plies, Warnings warnings) {
    for (Shortage shortage : shortages(plies)) {
      warnings.add(shortage.code(), shortage.what() + "; " + shortage.cure(), shortage.where());
    }
  }

  private List<Shortage> shortages(List<PlyDepth> plies) {
    List<Shortage> found = new ArrayList<>();
    double longest = cutters.stream().mapToDouble(Tool::fluteLengthMm).max().orElse(0);
    double deepest = 0;
    for (PlyDepth ply : plies) {
      if (deepestMm(ply) > longest) {
        found.add(shortFlutes(ply, longest));
      }
      deepest = Math.max(deepest, deepestMm(ply));
    }
    for (Tool tool : cutters) {
      double depth = Math.min(deepest, tool.fluteLengthMm());
      if (tool.stickoutMm() > 0 && tool.stickoutMm() < depth) {
        found.add(shortStickout(tool, depth));
      }
    }
    return found;
  }

  /** Where depths go by place its deepest target counts. */
  private static double deepestMm(PlyDepth ply) {
    return ply.shown() == null ? ply.targetMm() : ply.shown().mostTargetMm();
  }

  private Shortage shortFlutes(PlyDepth ply, double longestMm) {
    return new Shortage(
        "short-flutes",
        cutters.isEmpty()
            ? Template.fill("it is to be cut to %.3f mm, and no cutter is flat", deepestMm(ply))
            : Template.fill(
                "it is to be cut to %.3f mm, and the longest flutes have %.2f mm: it won't be"
                    + " reached",
                deepestMm(ply), longestMm),
        "ply " + ply.ply().number() + " (" + ply.ply().name() + ")",
        Template.fill(
            "list a flat cutter with flutes of %.2f mm or more, or keep the ply out of"
                + " terrain.plies and the zones",
            roundedUp(ply.targetMm())));
  }

  private static Shortage shortStickout(Tool tool, double depthMm) {
    return new Shortage(
        "short-stickout",
        Template.fill(
            "it sticks out %.2f mm and would be run down to %.3f mm: its holder would touch the"
                + " panel",
            tool.stickoutMm(), depthMm),
        tool.name(),
        Template.fill("clamp it with a stickout of %.2f mm or more", roundedUp(depthMm)));
  }

  /** To 0.01 mm. */
  private static double roundedUp(double mm) {
    return Math.ceil(mm * 100 - 1e-9) / 100;
  }
}
