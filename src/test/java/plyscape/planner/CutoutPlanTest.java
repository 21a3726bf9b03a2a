package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.gcode.PassComment;
import plyscape.gcode.Program;
import plyscape.layup.PanelPoint;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.planner.cut.BiteRaster;
import plyscape.planner.cut.Proof;

/** Pins and outline, from the job to the cut. */
class CutoutPlanTest {

  @TempDir Path folder;

  private PanelPlan plan(String more, Warnings warnings) throws IOException {
    return plan(more, "", warnings);
  }

  private PanelPlan plan(String more, String panel, Warnings warnings) throws IOException {
    return plan(more, panel, "", warnings);
  }

  private PanelPlan plan(String more, String panel, String measured, Warnings warnings)
      throws IOException {
    return new SmallJob(folder, SmallJob.THREE_PLIES + measured)
        .with(
            "hill.asc",
            "ncols 3\nnrows 3\nxllcorner 500000\nyllcorner 5600000\ncellsize 250\n"
                + "1 1 1\n1 9 1\n1 1 1\n")
        .plan(
            """
            layup: layup.yaml
            terrain: {file: hill.asc, crs: "EPSG:32632", plies: [pale, dark]}
            panel: {width: 60, height: 60, border: 8%s}
            tools:
              - {name: end mill 3, diameter: 3, flute_length: 12, stepdown: 2, feed: 1800, plunge: 500}
              - {name: end mill 1.5, diameter: 1.5, flute_length: 4, stepdown: 1, feed: 1000, plunge: 300}
            """
                    .formatted(panel)
                + more,
            warnings);
  }

  private static BiteRaster cut(PanelPlan plan, DoubleBinaryOperator face) {
    return SmallJob.cut(plan, new BiteRaster(60, 60, face));
  }

  @Test
  void pinsAreBoredFirstAndTheOutlineIsCutLast() throws IOException {
    Warnings warnings = new Warnings();
    PanelPlan plan =
        plan(
            """
            pins: {diameter: 4, depth: 4, at: [[4, 4], [56, 56]]}
            outline: {shape: [9, 9, 51, 9, 51, 51, 9, 51], tabs: 4, tab_width: 5, tab_height: 1.5}
            """,
            warnings);
    assertEquals(0, plan.verification().gougedMm2());
    assertTrue(plan.verification().collisions().isEmpty());
    ToolProgram first = plan.programs().get(0);
    ToolProgram last = plan.programs().get(plan.programs().size() - 1);
    assertTrue(first.text().contains("(pins: holes of 4.000 to depth 4.000)"));
    assertTrue(last.text().contains("(outline: to depth "));
    assertTrue(last.text().contains("the piece comes free"), "the file warns of it");
    assertTrue(PassComment.boresPins(first.text()) && !PassComment.cutsOutline(first.text()));
    assertTrue(PassComment.cutsOutline(last.text()) && !PassComment.boresPins(last.text()));
    BiteRaster wood = cut(plan, (x, y) -> 0);
    assertEquals(4, wood.depthAt(4, 4), 0.001);
    assertEquals(4, wood.depthAt(5.8, 4), 0.001);
    assertEquals(0, wood.depthAt(6.2, 4), 0.001);
    // Halfway along a side stands no tab, or one: all round the kerf is either through or a tab.
    double through = 0;
    double tab = 0;
    for (double t = 9; t < 51; t += 0.1) {
      double depth = wood.depthAt(t, 9 - 0.1 - 1.5);
      through += depth > 6.09 ? 0.1 : 0;
      tab += Math.abs(depth - 4.3) < 0.001 ? 0.1 : 0;
    }
    assertTrue(tab > 4.5 && through > 25 && through + tab > 40, through + " mm and " + tab + " mm");
  }

  /**
   * The panel's top rises by 0.4 mm from the lower to the upper edge, and it is 0.3 mm thicker at
   * the right edge than at the left.
   */
  @Test
  void bentPanel_isCutFreeAtItsBottomWhereverThatIs() throws IOException {
    Files.writeString(
        folder.resolve("top.csv"), "x,y,z\n0,0,-0.2\n60,0,-0.2\n60,60,0.2\n0,60,0.2\n30,30,0\n");
    Warnings warnings = new Warnings();
    PanelPlan plan =
        plan(
            """
            pins: {diameter: 4, depth: 4, at: [[4, 4], [56, 56]]}
            outline: {shape: [9, 9, 51, 9, 51, 51, 9, 51], tabs: 4, tab_width: 5, tab_height: 1.5}
            """,
            ", top_map: {file: top.csv}",
            """
            measured_places:
              - {at: [0, 30], bottoms: {1: 0.88, 2: 1.76, 3: 5.65}, tolerance: 0.01}
              - {at: [60, 30], bottoms: {1: 0.92, 2: 1.84, 3: 5.95}, tolerance: 0.01}
            press_taper: 0.15
            """,
            warnings);
    assertTrue(plan.verification().collisions().isEmpty());
    DoubleBinaryOperator face = (x, y) -> 0.2 - y / 150;
    BiteRaster wood = cut(plan, face);
    // A flat end is level where the face under it slopes: deeper by the slope over its radius.
    double level = 0.03;
    for (double[] pin : new double[][] {{4, 4}, {56, 56}}) {
      assertEquals(4, wood.depthAt(pin[0], pin[1]) - face.applyAsDouble(pin[0], pin[1]), level);
    }
    double thinnest = 9;
    double thickest = 0;
    double tab = 0;
    double through = 0;
    for (double t = 9; t < 51; t += 0.1) {
      double[][] sides = {{t, 7.4}, {t, 52.6}, {7.4, t}, {52.6, t}};
      for (double[] at : sides) {
        double depth = wood.depthAt(at[0], at[1]) - face.applyAsDouble(at[0], at[1]);
        double bottom =
            plan.depths().bottom(new PanelPoint(at[0], at[1])).bottomMm(); // as estimated
        thinnest = Math.min(thinnest, bottom);
        thickest = Math.max(thickest, bottom);
        through += Math.abs(depth - bottom - 0.3) < level ? 0.1 : 0;
        tab += Math.abs(depth - bottom + 1.5) < level ? 0.1 : 0;
      }
    }
    assertTrue(thickest - thinnest > 0.2, thinnest + " to " + thickest);
    assertTrue(tab > 18 && through > 100 && through + tab > 164, through + " mm and " + tab);
  }

  @Test
  void holesThroughABentPanel_endBelowItsBottom() throws IOException {
    PanelPlan plan =
        plan(
            """
            pins: {diameter: 4, depth: 6, at: [[4, 30], [56, 30]]}
            outline: {shape: panel, tabs: 4, through: 0.25}
            """,
            "",
            """
            measured_places:
              - {at: [0, 30], bottoms: {3: 5.65}, tolerance: 0.01}
              - {at: [60, 30], bottoms: {3: 5.95}, tolerance: 0.01}
            press_taper: 0.15
            """,
            new Warnings());
    BiteRaster wood = cut(plan, (x, y) -> 0);
    double left = plan.depths().bottom(new PanelPoint(4, 30)).bottomMm();
    double right = plan.depths().bottom(new PanelPoint(56, 30)).bottomMm();
    assertTrue(right - left > 0.2, left + " and " + right);
    assertEquals(left + 0.2, wood.depthAt(4, 30), 0.02);
    assertEquals(right + 0.2, wood.depthAt(56, 30), 0.02);
    assertTrue(
        plan.warnings().stream().anyMatch(w -> w.code().equals("outline-shallow")),
        "nothing was read at the upper and lower edge");
  }

  @Test
  void cutThroughThePanelElsewhere_isStillAFault() throws IOException {
    PanelPlan plan =
        plan("outline: {shape: [9, 9, 51, 9, 51, 51, 9, 51], tabs: 2}\n", new Warnings());
    ToolProgram last = plan.programs().get(plan.programs().size() - 1);
    // The same outline cut four millimetres farther in.
    String moved = last.text().replace("G54\n", "G54\n(moved)\n");
    assertTrue(moved.contains("(moved)"));
    var cut = Proof.begin(plan.landscape(), List.of(), 0.1);
    for (ToolProgram program : plan.programs()) {
      Program parsed = SmallJob.parsed(plan, program);
      cut.cut(new plyscape.simulate.Cut(parsed, program.tool()));
    }
    assertTrue(
        Proof.of(plan.landscape(), cut).verification().gougedMm2() > 100,
        "without the outline's leave its kerf is a gouge");
  }

  @Test
  void panelsOwnEdges_needNothingInside() throws IOException {
    PanelPlan plan = plan("outline: {shape: panel, tabs: 0}\n", new Warnings());
    assertEquals(0, plan.verification().gougedMm2());
    assertTrue(
        plan.warnings().stream().anyMatch(w -> w.code().equals("outline-no-tabs")),
        "a piece that nothing holds");
  }

  @Test
  void slips_areToldBeforeAnythingIsCut() {
    assertThrows(
        JobFault.class,
        () -> plan("pins: {diameter: 1.5, depth: 4, at: [[4, 4]]}\n", new Warnings()),
        "no cutter thin enough");
    assertThrows(
        JobFault.class,
        () -> plan("pins: {diameter: 4, depth: 2, at: [[14, 14]]}\n", new Warnings()),
        "a pin where the panel is cut deep");
    assertThrows(
        InputFault.class,
        () -> plan("pins: {diameter: 4, depth: 2, at: [[1, 14]]}\n", new Warnings()),
        "half a hole");
    assertThrows(
        JobFault.class,
        () ->
            plan(
                "pins: {diameter: 4, depth: 2, at: [[4, 4]]}\n"
                    + "outline: {shape: [5, 5, 51, 5, 51, 51, 5, 51]}\n",
                new Warnings()),
        "the outline opens a hole");
    assertThrows(
        JobFault.class,
        () -> plan("outline: {tool: end mill 1.5}\n", new Warnings()),
        "flutes too short");
    assertThrows(
        InputFault.class, () -> plan("outline: {tool: saw}\n", new Warnings()), "no such cutter");
    assertThrows(
        InputFault.class,
        () -> plan("outline: {shape: [9, 9, 51, 51, 51, 9, 9, 51]}\n", new Warnings()),
        "crosses itself");
  }
}
