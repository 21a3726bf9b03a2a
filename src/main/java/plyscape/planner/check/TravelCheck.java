package plyscape.planner.check;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import plyscape.fault.JobFault;
import plyscape.job.Job;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.plan.Landscape;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * Finds early, and as a matter of the job, that the machine's axes are too short for it: before any
 * map is read, when the pockets are there, and when the moves are. Looks at the ends of moves only;
 * the simulation looks at the bulges of arcs too, and has the last word.
 */
public final class TravelCheck {

  private TravelCheck() {}

  /**
   * Checks what the carved area needs, as far as the panel alone tells: the terrain is fitted into
   * it, so that it fills its width or its height, less the borders; the largest cutter stays half
   * its diameter inside. At a fixed map scale nothing is known of the size.
   *
   * @param job with the panel that is cut, one of several in a tiled job
   * @param deepestMm deepest cut that is known of
   * @throws JobFault if the machine is too small whatever the terrain's shape
   */
  public static void requireLeast(Job job, double thicknessMm, double deepestMm) {
    Job.PanelSpec panel = job.panel();
    double inset = panel.borderMm() + largestRadiusMm(job);
    AxisSpans wide = AxisSpans.of(job, thicknessMm);
    wide.widen(panel.widthMm() / 2, panel.heightMm() / 2, deepestMm);
    AxisSpans high = AxisSpans.of(job, thicknessMm);
    high.widen(panel.widthMm() / 2, panel.heightMm() / 2, deepestMm);
    if (job.terrain().options().scale() == null) {
      wide.widen(inset, panel.heightMm() / 2, 0);
      wide.widen(panel.widthMm() - inset, panel.heightMm() / 2, 0);
      high.widen(panel.widthMm() / 2, inset, 0);
      high.widen(panel.widthMm() / 2, panel.heightMm() - inset, 0);
    }
    Optional<JobFault> fault = wide.fault(job.machine());
    if (fault.isPresent() && high.fault(job.machine()).isPresent()) {
      throw fault.get();
    }
  }

  /**
   * Checks what the pockets need at least, before toolpaths are planned.
   *
   * @throws JobFault if an axis is too short
   */
  public static void requirePockets(Landscape panel) {
    double radius = largestRadiusMm(panel.job());
    AxisSpans spans = AxisSpans.of(panel.job(), panel.thicknessMm());
    panel
        .tiling()
        .pockets()
        .forEach(
            (ply, pocket) -> {
              double depth = panel.depths().of(ply).targetMm();
              if (depth > 0 && !pocket.isEmpty()) {
                Envelope at = pocket.getEnvelopeInternal();
                double insetX = Math.min(radius, at.getWidth() / 2);
                double insetY = Math.min(radius, at.getHeight() / 2);
                spans.widen(at.getMinX() + insetX, at.getMinY() + insetY, depth);
                spans.widen(at.getMaxX() - insetX, at.getMaxY() - insetY, depth);
              }
            });
    spans.require(panel.job().machine());
  }

  /**
   * Checks the moves themselves (src/contract.md, section 5).
   *
   * @param thicknessMm of the pressed panel
   * @throws JobFault if an axis is too short
   */
  public static void require(Job job, double thicknessMm, List<ToolRun> runs) {
    AxisSpans spans = AxisSpans.of(job, thicknessMm);
    for (ToolRun run : runs) {
      for (Pass pass : run.passes()) {
        for (Move move : pass.moves()) {
          spans.widen(move.x(), move.y(), move.depth());
        }
      }
    }
    spans.require(job.machine());
  }

  private static double largestRadiusMm(Job job) {
    return job.tools().stream().mapToDouble(Tool::radiusMm).max().orElse(0);
  }
}
