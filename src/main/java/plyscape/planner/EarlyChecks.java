package plyscape.planner;

import java.util.List;
import plyscape.fault.JobFault;
import plyscape.job.Job;
import plyscape.job.TerrainSpec;
import plyscape.layup.Depths;
import plyscape.layup.FloorCheck;
import plyscape.layup.PanelCorners;
import plyscape.layup.PlyDepth;
import plyscape.plan.Acceptance;
import plyscape.plan.PlanOptions;
import plyscape.planner.check.Assignment;
import plyscape.planner.check.CutterReach;
import plyscape.planner.check.TravelCheck;
import plyscape.planner.cut.Cutouts;

/**
 * What can be said of a job before any map is read, so that nobody waits for a refusal. Refuses
 * only what can't work whatever the maps hold; {@link Assignment} and {@link TravelCheck} look
 * again when the regions are there.
 */
final class EarlyChecks {

  private EarlyChecks() {}

  /**
   * Checks floor, cutters and travel.
   *
   * @param job with the panel that is cut, one of several in a tiled job
   * @param own whether each panel of the job has depths of its own, which aren't known yet
   * @throws JobFault if the job can't be done
   */
  static void require(Job job, Depths depths, PlanOptions options, boolean own) {
    double deepestMm = 0;
    if (!own && job.terrain().bands() instanceof TerrainSpec.NamedBands) {
      // The lowest ground gets the last ply; a list of elevations may lie below all ground.
      List<Integer> plies = job.terrain().plyNumbers();
      PlyDepth last = depths.of(plies.get(plies.size() - 1));
      requireFloor(job, depths, last.ply().number());
      if (!options.accepts(Acceptance.SHORT_FLUTES)) {
        new CutterReach(job).require(List.of(last));
      }
      deepestMm = last.targetMm();
    }
    TravelCheck.requireLeast(job, depths.thicknessMm(), deepestMm);
    Cutouts.require(job, depths.thicknessMm());
  }

  /** Where depths go by place the ply may come to show where most wood is left. */
  private static void requireFloor(Job job, Depths depths, int ply) {
    if (depths.byPlace()) {
      PanelCorners corners =
          PanelCorners.of(depths, ply, job.panel().widthMm(), job.panel().heightMm());
      FloorCheck.require(depths, ply, corners.mostFloor(), job.allowance());
    } else {
      FloorCheck.require(depths, ply, job.allowance());
    }
  }
}
