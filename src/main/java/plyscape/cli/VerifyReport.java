package plyscape.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.MotionModel;
import plyscape.machine.Times;
import plyscape.report.PlanFigures;
import plyscape.simulate.Cut;
import plyscape.simulate.CutResult;
import plyscape.simulate.Difference;
import plyscape.simulate.Verdict;
import plyscape.simulate.Verification;
import plyscape.text.Numbers;
import plyscape.text.TextTable;

/**
 * Says how a simulated panel compares with its plan, as text or JSON, and what of it is a fault.
 */
final class VerifyReport {

  /**
   * Wood left standing, where a cutter reaches, beyond what the plan said, that still passes:
   * specks are sanded off. mm2.
   */
  static final double UNCUT_ALLOWED_MM2 = 0.5;

  private static final int SHOWN = 10;

  private final VerifyInput input;
  private final List<Cut> cuts;
  private final CutResult result;
  private final boolean stopped;
  private final double[] shownMm2;

  /**
   * Of a result.
   *
   * @param stopped whether the run was stopped before its end, so that wood left standing is no
   *     fault
   */
  VerifyReport(VerifyInput input, List<Cut> cuts, CutResult result, boolean stopped) {
    this.input = input;
    this.cuts = cuts;
    this.result = result;
    this.stopped = stopped;
    this.shownMm2 = shown();
  }

  /** What is wrong, empty when the panel is as planned. */
  List<String> faults() {
    Verification v = result.verification();
    List<String> faults = new ArrayList<>();
    if (v.gougedMm2() > 0) {
      faults.add(Numbers.fixed(v.gougedMm2(), 3) + " mm2 gouged");
    }
    if (!stopped && v.uncutMm2() > input.plan().uncutMm2() + UNCUT_ALLOWED_MM2) {
      faults.add(Numbers.fixed(v.uncutMm2(), 3) + " mm2 left uncut");
    }
    if (!v.collisions().isEmpty()) {
      faults.add(
          v.collisions().size() + (v.collisions().size() == 1 ? " collision" : " collisions"));
    }
    return faults;
  }

  /**
   * Area of the carved part in which each ply's wood shows after sanding, mm2; last: glue lines and
   * below the panel.
   */
  private double[] shown() {
    List<PlanFigures.PlyFigures> plies = input.plan().plies();
    double sanding =
        plies.stream()
            .filter(p -> p.targetMm() > 0)
            .mapToDouble(p -> (p.topMm() + p.bottomMm()) / 2 - p.targetMm())
            .findFirst()
            .orElse(0);
    var frame = result.field().frame();
    double[] area = new double[plies.size() + 1];
    for (int row = 0; row < frame.rows(); row++) {
      for (int column = 0; column < frame.columns(); column++) {
        if (!input.plan().carved().contains(frame.centreX(column), frame.centreY(row))) {
          continue;
        }
        double face = result.field().at(column, row) + sanding;
        int ply = 0;
        while (ply < plies.size()
            && !(face >= plies.get(ply).topMm() && face <= plies.get(ply).bottomMm())) {
          ply++;
        }
        area[ply] += result.field().cellAreaMm2();
      }
    }
    return area;
  }

  private Times times(Cut cut) {
    Program p = cut.program();
    return new MotionModel(input.machine())
        .times(p.startX(), p.startY(), p.startDepth(), p.moves());
  }

  String text(boolean all) {
    Verification v = result.verification();
    StringBuilder out = new StringBuilder();
    TextTable programs =
        new TextTable().left("program").left("tool").right("moves").right("cut mm").right("time");
    for (Cut cut : cuts) {
      Times t = times(cut);
      programs.row(
          cut.program().file(),
          cut.tool().name(),
          "" + cut.program().blocks().size(),
          Numbers.fixed(t.cutMm(), 0),
          JobRun.duration(t.totalS()));
    }
    out.append(programs.text()).append('\n');
    TextTable plies =
        new TextTable().right("ply").left("name").right("planned mm2").right("shows mm2");
    List<PlanFigures.PlyFigures> figures = input.plan().plies();
    for (int i = 0; i < figures.size(); i++) {
      plies.row(
          "" + figures.get(i).number(),
          figures.get(i).name(),
          Numbers.fixed(figures.get(i).areaMm2(), 1),
          Numbers.fixed(shownMm2[i], 1));
    }
    plies.row("", "glue line", "", Numbers.fixed(shownMm2[figures.size()], 1));
    out.append(plies.text()).append('\n');
    out.append("at cells of ")
        .append(Numbers.trimmed(v.cellMm(), 3))
        .append(" mm: ")
        .append(Numbers.fixed(100 * v.matchedShare(), 2))
        .append(" % of the carved area matches, ")
        .append(Numbers.fixed(v.gougedMm2(), 2))
        .append(" mm2 gouged")
        .append(
            v.gougedMm2() > 0
                ? " (up to " + Numbers.fixed(v.gougeMaxMm(), 3) + " mm over a wall)"
                : "")
        .append(", ")
        .append(Numbers.fixed(v.uncutMm2(), 2))
        .append(stopped ? " mm2 still to cut, " : " mm2 left uncut, ")
        .append(Numbers.fixed(v.unreachableMm2(), 2))
        .append(" mm2 out of every cutter's reach\n");
    places(out, all);
    return out.toString();
  }

  private void places(StringBuilder out, boolean all) {
    int shown = 0;
    for (Difference d : differences()) {
      if (!all && shown++ == SHOWN) {
        out.append("  and more, with -v\n");
        break;
      }
      out.append(d.verdict() == Verdict.GOUGED ? "gouged " : "uncut  ")
          .append(Numbers.fixed(d.areaMm2(), 2))
          .append(" mm2 about X")
          .append(Numbers.fixed(d.x(), 2))
          .append(" Y")
          .append(Numbers.fixed(d.y(), 2))
          .append(": ")
          .append(Numbers.fixed(d.depthMm(), 3))
          .append(" mm deep for ")
          .append(Numbers.fixed(d.targetMm(), 3))
          .append('\n');
    }
    shown = 0;
    for (Verification.Collision c : result.verification().collisions()) {
      if (!all && shown++ == SHOWN) {
        out.append("  and more, with -v\n");
        break;
      }
      out.append(c.file())
          .append(" line ")
          .append(c.line())
          .append(", X")
          .append(Numbers.fixed(c.x(), 2))
          .append(" Y")
          .append(Numbers.fixed(c.y(), 2))
          .append(", ")
          .append(Numbers.fixed(c.depthMm(), 3))
          .append(" mm deep: ")
          .append(c.what())
          .append('\n');
    }
    for (Cut cut : cuts) {
      for (Program.Problem p : cut.program().problems()) {
        out.append(cut.program().file())
            .append(':')
            .append(p.line())
            .append(':')
            .append(p.column())
            .append(": ")
            .append(p.message())
            .append('\n');
      }
    }
  }

  /** Specks of less than a few cells say nothing to a person; they are in the sums. */
  private List<Difference> differences() {
    double speck = 4 * result.field().cellAreaMm2();
    return result.differences().stream()
        .filter(d -> d.verdict() == Verdict.GOUGED || !stopped && d.areaMm2() > speck)
        .toList();
  }

  String json() {
    Verification v = result.verification();
    ObjectNode root = JsonText.object("plyscape-verification-1");
    root.put("passed", faults().isEmpty());
    root.put("cell_mm", v.cellMm())
        .put("matched_share", v.matchedShare())
        .put("gouged_mm2", v.gougedMm2())
        .put("gouge_max_mm", v.gougeMaxMm())
        .put("uncut_mm2", v.uncutMm2())
        .put("unreachable_mm2", v.unreachableMm2());
    ArrayNode programs = root.putArray("programs");
    for (Cut cut : cuts) {
      Times t = times(cut);
      programs
          .addObject()
          .put("file", cut.program().file())
          .put("tool", cut.tool().name())
          .put("moves", cut.program().blocks().size())
          .put("cut_mm", t.cutMm())
          .put("rapid_mm", t.rapidMm())
          .put("time_s", t.totalS());
    }
    ArrayNode plies = root.putArray("plies");
    List<PlanFigures.PlyFigures> figures = input.plan().plies();
    for (int i = 0; i < figures.size(); i++) {
      plies
          .addObject()
          .put("number", figures.get(i).number())
          .put("name", figures.get(i).name())
          .put("planned_mm2", figures.get(i).areaMm2())
          .put("shown_mm2", shownMm2[i]);
    }
    root.put("glue_line_mm2", shownMm2[figures.size()]);
    ArrayNode places = root.putArray("differences");
    for (Difference d : result.differences()) {
      places
          .addObject()
          .put("kind", d.verdict() == Verdict.GOUGED ? "gouged" : "uncut")
          .put("area_mm2", d.areaMm2())
          .put("x", d.x())
          .put("y", d.y())
          .put("depth_mm", d.depthMm())
          .put("target_mm", d.targetMm())
          .putArray("box")
          .add(d.minX())
          .add(d.minY())
          .add(d.maxX())
          .add(d.maxY());
    }
    ArrayNode collisions = root.putArray("collisions");
    for (Verification.Collision c : v.collisions()) {
      collisions
          .addObject()
          .put("file", c.file())
          .put("line", c.line())
          .put("x", c.x())
          .put("y", c.y())
          .put("depth_mm", c.depthMm())
          .put("what", c.what());
    }
    return JsonText.of(root);
  }
}
