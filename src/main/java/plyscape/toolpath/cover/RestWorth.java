package plyscape.toolpath.cover;

import plyscape.machine.Tool;

/**
 * Leaves small patches to the next smaller cutter: getting to a patch costs about as long with
 * either, so the larger one pays only where its faster clearing makes up for it.
 */
public final class RestWorth {

  /** What one more place costs: lift, way and coming down, s. */
  private static final double VISIT_S = 0.8;

  private final StepNodes nodes;

  /** For the nodes of a step. */
  public RestWorth(StepNodes nodes) {
    this.nodes = nodes;
  }

  /**
   * Patches of wanted nodes that are smaller than an area go on standing.
   *
   * @param leastMm2 smallest patch worth a visit
   * @param floor notes what is left so
   */
  public void drop(double leastMm2, PlannedFloor floor) {
    int least = (int) Math.ceil(leastMm2 / nodes.lattice().nodeAreaMm2());
    Patches patches = nodes.patches();
    for (int run = 0; run < patches.runs(); run++) {
      if (patches.nodes(run) < least) {
        nodes.leaveStanding(patches.first(run), patches.end(run) - 1, floor);
      }
    }
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
   * The smallest patch that pays, mm2.
   *
   * @param next the next smaller cutter, which would clear it to the same depth
   */
  public static double leastMm2(Tool tool, Tool next) {
    double gain = 1 / rateMm2PerS(next) - 1 / rateMm2PerS(tool);
    return gain <= 0 ? Double.POSITIVE_INFINITY : VISIT_S / gain;
  }

  /** What a cutter clears at its stepover, mm2/s. */
  public static double rateMm2PerS(Tool tool) {
    return tool.stepoverMm() * tool.feedMmPerMin() / 60;
  }
}
