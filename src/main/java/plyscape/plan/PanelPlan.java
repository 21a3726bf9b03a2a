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
 * @param cutouts where pins and outline are cut
 * @param cutWarnings what toolpaths and simulation warned of
 * @param estimates the time with one larger cutter more, for each of a few
 */
public record PanelPlan(
    Landscape landscape,
    List<ToolProgram> programs,
    PlanTime time,
    Verification verification,
    List<CutoutArea> cutouts,
    List<Warning> cutWarnings,
    List<CutterEstimate> estimates)
    implements CutPlan {

  /** Checks that nothing is missing and copies the lists. */
  public PanelPlan {
    Objects.requireNonNull(landscape);
    Objects.requireNonNull(time);
    Objects.requireNonNull(verification);
    programs = List.copyOf(programs);
    cutouts = List.copyOf(cutouts);
    cutWarnings = List.copyOf(cutWarnings);
    estimates = List.copyOf(estimates);
  }

  @Override
  public List<PanelFigures> figures() {
    return List.of(PanelFigures.of(this));
  }

  @Override
  public List<Warning> warnings() {
    List<Warning> all = new ArrayList<>(landscape.warnings());
    all.addAll(cutWarnings);
    return List.copyOf(all);
  }
}
