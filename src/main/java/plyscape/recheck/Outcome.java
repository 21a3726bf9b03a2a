package plyscape.recheck;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.gcode.SpindleStart;
import plyscape.grid.CellFrame;
import plyscape.machine.MotionModel;
import plyscape.machine.Times;
import plyscape.report.json.PlanFigures;
import plyscape.simulate.Bite;
import plyscape.simulate.Cut;
import plyscape.simulate.CutResult;
import plyscape.simulate.Simulator;
import plyscape.simulate.Verification;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * How a simulated panel compares with its plan, and what of it is a fault. Immutable.
 *
 * @param plan what was checked
 * @param cuts the programs as far as they were run
 * @param result of their simulation
 * @param stopped whether the run was stopped before its end, so that wood left standing is no fault
 */
public record Outcome(WrittenPlan plan, List<Cut> cuts, CutResult result, boolean stopped) {

  /** Runs programs in simulation and compares. */
  public static Outcome of(WrittenPlan plan, StopPoint stop, double cellMm) {
    List<Cut> cuts = stop == null ? plan.cuts() : stop.run(plan.cuts());
    CutResult result = Simulator.run(plan.setup(cellMm), cuts, plan.targets(), plan.tools());
    return new Outcome(plan, cuts, result, stop != null);
  }

  /** What is wrong, empty when the panel is as planned. */
  public List<String> faults() {
    Verification v = result.verification();
    List<String> faults = new ArrayList<>();
    if (v.gougedMm2() > 0) {
      faults.add(Numbers.fixed(v.gougedMm2(), 3) + " mm2 gouged");
    }
    if (!stopped && v.leavesWood(plan.plan().uncutMm2())) {
      faults.add(Numbers.fixed(v.uncutMm2(), 3) + " mm2 left uncut");
    }
    if (!v.collisions().isEmpty()) {
      faults.add(
          v.collisions().size() + (v.collisions().size() == 1 ? " collision" : " collisions"));
    }
    List<TextFault> text = textFaults();
    if (!text.isEmpty()) {
      faults.add(
          text.size() == 1
              ? "a fault in the text of " + text.get(0)
              : text.size() + " faults in the programs' texts, the first in " + text.get(0));
    }
    for (Bite bite : v.bitesTooDeep()) {
      faults.add(
          Template.fill(
              "a bite of %.3f mm in %s, the stepdown is %.3t",
              bite.biteMm(), bite.file(), bite.stepdownMm()));
    }
    return faults;
  }

  /** What is wrong in the texts alone. */
  List<TextFault> textFaults() {
    return TextCheck.of(plan);
  }

  /** Times of one of the programs. */
  Times times(Cut cut) {
    Program p = cut.program();
    return new MotionModel(plan.machine()).times(p.startX(), p.startY(), p.startDepth(), p.moves());
  }

  /** Seconds of one of the programs, without spindle start as in plan.json. */
  static double seconds(Cut cut, Times times) {
    return times.totalS() - SpindleStart.seconds(cut.program(), times);
  }

  /**
   * Area of the carved part in which each ply's wood shows after sanding, mm2; last: glue lines and
   * below the panel.
   */
  double[] shownMm2() {
    List<PlanFigures.PlyFigures> plies = plan.plan().plies();
    double sanding = sandingMm(plies);
    CellFrame frame = result.field().frame();
    double[] area = new double[plies.size() + 1];
    for (int row = 0; row < frame.rows(); row++) {
      for (int column = 0; column < frame.columns(); column++) {
        if (plan.plan().carved().contains(frame.centreX(column), frame.centreY(row))) {
          area[plyAt(plies, result.field().at(column, row) + sanding)] +=
              result.field().cellAreaMm2();
        }
      }
    }
    return area;
  }

  private static double sandingMm(List<PlanFigures.PlyFigures> plies) {
    return plies.stream()
        .filter(p -> p.targetMm() > 0)
        .mapToDouble(p -> (p.topMm() + p.bottomMm()) / 2 - p.targetMm())
        .findFirst()
        .orElse(0);
  }

  private static int plyAt(List<PlanFigures.PlyFigures> plies, double face) {
    int ply = 0;
    while (ply < plies.size()
        && !(face >= plies.get(ply).topMm() && face <= plies.get(ply).bottomMm())) {
      ply++;
    }
    return ply;
  }
}
