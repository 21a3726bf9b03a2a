package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import plyscape.fault.Warning;
import plyscape.simulate.Verification;

/**
 * One panel, cut and proved. Immutable.
 *
 * @param landscape its regions
 * @param programs one a used tool, in cutting order
 * @param time sums over the programs
 * @param verification outcome of the simulation
 * @param cutWarnings what toolpaths and simulation warned of
 */
public record PanelPlan(
    Landscape landscape,
    List<ToolProgram> programs,
    PlanTime time,
    Verification verification,
    List<Warning> cutWarnings)
    implements CutPlan {

  /** Checks that nothing is missing and copies the lists. */
  public PanelPlan {
    Objects.requireNonNull(landscape);
    Objects.requireNonNull(time);
    Objects.requireNonNull(verification);
    programs = List.copyOf(programs);
    cutWarnings = List.copyOf(cutWarnings);
  }

  @Override
  public List<Warning> warnings() {
    List<Warning> all = new ArrayList<>(landscape.warnings());
    all.addAll(cutWarnings);
    return List.copyOf(all);
  }
}
