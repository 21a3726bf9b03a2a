package plyscape.simulate;

import java.util.List;
import plyscape.machine.Tool;

/**
 * Cuts parsed programs, in their order, into a panel and compares the surface with the targets.
 *
 * <p>Shares nothing with the path planner: it starts from the text's motions and the regions'
 * outlines, and has geometry of its own. The same input gives the same result on any number of
 * processors. See {@link HeightFieldCutter} for how exact the surface is, {@link Comparison} for
 * how it is judged, {@link FaceComparison} where faces follow the terrain; {@link Simulation} does
 * the same program by program.
 */
public final class Simulator {

  private Simulator() {}

  /**
   * Cuts and compares.
   *
   * @param cuts programs in cutting order, each with its tool
   * @param targets where each ply should show; elsewhere the panel stays uncut
   * @param tools all tools that were to choose from: the smallest decides what can be reached;
   *     where faces follow the terrain those that cut decide
   */
  public static CutResult run(Setup setup, List<Cut> cuts, List<Target> targets, List<Tool> tools) {
    Simulation simulation = new Simulation(setup, targets);
    cuts.forEach(simulation::cut);
    return simulation.compare(tools);
  }

  /** Cuts alone: the surface in {@code field}, and what went wrong on the way. */
  public static List<Verification.Collision> cut(Setup setup, List<Cut> cuts, HeightField field) {
    Simulation simulation = new Simulation(setup, List.of(), field);
    cuts.forEach(simulation::cut);
    return simulation.collisions();
  }
}
