package plyscape.recheck;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import plyscape.machine.Times;
import plyscape.report.json.PlanFigures;
import plyscape.simulate.Bite;
import plyscape.simulate.CellVerdict;
import plyscape.simulate.Cut;
import plyscape.simulate.Difference;
import plyscape.simulate.Verification;

/** An outcome for scripts, as a tree of the schema {@code plyscape-verification-1}. */
public final class OutcomeJson {

  /** Value of the key {@code schema}. */
  public static final String SCHEMA = "plyscape-verification-1";

  private OutcomeJson() {}

  /** Fills a tree, after its schema. */
  public static void put(Outcome outcome, ObjectNode root) {
    Verification v = outcome.result().verification();
    root.put("passed", outcome.faults().isEmpty());
    root.put("cell_mm", v.cellMm())
        .put("matched_share", v.matchedShare())
        .put("gouged_mm2", v.gougedMm2())
        .put("gouge_max_mm", v.gougeMaxMm())
        .put("uncut_mm2", v.uncutMm2())
        .put("unreachable_mm2", v.unreachableMm2())
        .put("bite_max_mm", v.biteMaxMm())
        .put("bite_max_share", v.biteMaxShare());
    programs(root.putArray("programs"), outcome);
    plies(root, outcome);
    bites(root.putArray("bites"), v);
    differences(root.putArray("differences"), outcome);
    collisions(root.putArray("collisions"), v);
    textFaults(root.putArray("text_faults"), outcome);
  }

  private static void programs(ArrayNode programs, Outcome outcome) {
    for (Cut cut : outcome.cuts()) {
      Times t = outcome.times(cut);
      programs
          .addObject()
          .put("file", cut.program().file())
          .put("tool", cut.tool().name())
          .put("moves", cut.program().blocks().size())
          .put("cut_mm", t.cutMm())
          .put("rapid_mm", t.rapidMm())
          .put("time_s", Outcome.seconds(cut, t));
    }
  }

  private static void plies(ObjectNode root, Outcome outcome) {
    ArrayNode plies = root.putArray("plies");
    List<PlanFigures.PlyFigures> figures = outcome.plan().plan().plies();
    double[] shown = outcome.shownMm2();
    for (int i = 0; i < figures.size(); i++) {
      plies
          .addObject()
          .put("number", figures.get(i).number())
          .put("name", figures.get(i).name())
          .put("planned_mm2", figures.get(i).areaMm2())
          .put("shown_mm2", shown[i]);
    }
    root.put("glue_line_mm2", shown[figures.size()]);
  }

  private static void bites(ArrayNode bites, Verification v) {
    for (Bite b : v.bites()) {
      bites
          .addObject()
          .put("file", b.file())
          .put("line", b.line())
          .put("x", b.x())
          .put("y", b.y())
          .put("depth_mm", b.depthMm())
          .put("bite_mm", b.biteMm())
          .put("stepdown_mm", b.stepdownMm());
    }
  }

  private static void differences(ArrayNode places, Outcome outcome) {
    for (Difference d : outcome.result().differences()) {
      places
          .addObject()
          .put("kind", d.verdict() == CellVerdict.GOUGED ? "gouged" : "uncut")
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
  }

  private static void textFaults(ArrayNode faults, Outcome outcome) {
    for (TextFault f : outcome.textFaults()) {
      faults
          .addObject()
          .put("file", f.file())
          .put("line", f.line())
          .put("column", f.column())
          .put("message", f.message());
    }
  }

  private static void collisions(ArrayNode collisions, Verification v) {
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
  }
}
