package plyscape.plan;

import java.util.List;
import java.util.Objects;
import plyscape.fault.Warning;

/**
 * What a panel came to, in figures. Immutable.
 *
 * @param toCut whether any of its regions is to be cut
 * @param cutters names of those that it is cut with, one a program, in cutting order
 * @param time expected
 * @param unreachableMm2 what no cutter gets to
 * @param estimates the time with one larger cutter more, for each of a few
 * @param warnings what toolpaths and simulation warned of
 */
public record PanelFigures(
    boolean toCut,
    List<String> cutters,
    PlanTime time,
    double unreachableMm2,
    List<CutterEstimate> estimates,
    List<Warning> warnings) {

  /** Copies the lists. */
  public PanelFigures {
    Objects.requireNonNull(time);
    cutters = List.copyOf(cutters);
    estimates = List.copyOf(estimates);
    warnings = List.copyOf(warnings);
  }

  /** Those of a panel that was cut. */
  public static PanelFigures of(PanelPlan plan) {
    return new PanelFigures(
        plan.landscape().deepestCutMm() > 0,
        plan.programs().stream().map(program -> program.tool().name()).toList(),
        plan.time(),
        plan.verification().unreachableMm2(),
        plan.estimates(),
        plan.cutWarnings());
  }
}
