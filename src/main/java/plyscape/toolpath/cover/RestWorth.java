package plyscape.toolpath.cover;

import java.util.Arrays;
import plyscape.machine.Tool;

/**
 * Leaves small patches to the next smaller cutter: getting to a patch costs about as long with
 * either, so the larger one pays only where its faster clearing makes up for it.
 */
public final class RestWorth {

  /**
   * What a larger cutter's visit to a place costs beyond the clearing, s: lift, way and coming
   * down, less what the next one is then spared.
   */
  private static final double VISIT_S = 0.3;

  /** Depths this little over a whole number of stepdowns don't begin another cut, mm. */
  private static final double SAME_MM = 1e-6;

  private final StepNodes nodes;

  /** For the nodes of a step. */
  public RestWorth(StepNodes nodes) {
    this.nodes = nodes;
  }

  /**
   * Patches of wanted nodes that the next cutter clears as soon go on standing.
   *
   * @param depthMm to which the step clears them
   * @param floor as it is
   */
  public void drop(Tool tool, Tool next, double depthMm, PlannedFloor floor) {
    Patches patches = nodes.patches();
    double[] highest = highest(patches, floor);
    for (int run = 0; run < patches.runs(); run++) {
      double mm2 = patches.nodes(run) * nodes.lattice().nodeAreaMm2();
      if (mm2 < leastMm2(tool, next, depthMm - highest[patches.patch(run)])) {
        nodes.leaveStanding(patches.first(run), patches.end(run) - 1);
      }
    }
  }

  /** Depth at which the highest wood of each patch stands, mm, by the run that stands for it. */
  private static double[] highest(Patches patches, PlannedFloor floor) {
    double[] highest = new double[patches.runs()];
    Arrays.fill(highest, Double.POSITIVE_INFINITY);
    for (int run = 0; run < patches.runs(); run++) {
      int patch = patches.patch(run);
      for (int node = patches.first(run); node < patches.end(run); node++) {
        highest[patch] = Math.min(highest[patch], floor.depthAt(node));
      }
    }
    return highest;
  }

  /** Marks the nodes of patches smaller than an area as small. */
  public void markSmall(double smallMm2) {
    int small = (int) Math.ceil(smallMm2 / nodes.lattice().nodeAreaMm2());
    Patches patches = nodes.patches();
    for (int run = 0; run < patches.runs(); run++) {
      if (patches.nodes(run) < small) {
        nodes.markSmall(patches.first(run), patches.end(run) - 1);
      }
    }
  }

  /**
   * The smallest patch that pays where one cut clears it, mm2.
   *
   * @param next the next smaller cutter, which would clear it to the same depth
   */
  public static double leastMm2(Tool tool, Tool next) {
    return leastMm2(tool, next, Math.min(tool.stepdownMm(), next.stepdownMm()));
  }

  /** The same where so much stands, mm: a smaller cutter may need more cuts for it. */
  private static double leastMm2(Tool tool, Tool next, double standingMm) {
    double gain =
        cuts(standingMm, next) / rateMm2PerS(next) - cuts(standingMm, tool) / rateMm2PerS(tool);
    return gain <= 0 ? Double.POSITIVE_INFINITY : VISIT_S / gain;
  }

  private static double cuts(double mm, Tool tool) {
    return Math.ceil((mm - SAME_MM) / tool.stepdownMm());
  }

  /** What a cutter clears at its stepover, mm2/s. */
  public static double rateMm2PerS(Tool tool) {
    return tool.stepoverMm() * tool.feedMmPerMin() / 60;
  }
}
