package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.PassComment;
import plyscape.gcode.Program;
import plyscape.job.JobReader;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
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
    Files.writeString(
        folder.resolve("hill.asc"),
        "ncols 3\n"
            + "nrows 3\n"
            + "xllcorner 500000\n"
            + "yllcorner 5600000\n"
            + "cellsize 250\n"
            + "1 1 1\n"
            + "1 9 1\n"
            + "1 1 1\n");
    Files.writeString(
        folder.resolve("layup.yaml"),
        """
        name: three
        plies:
          - {name: pale, colour: "#eeeeee", thickness: 0.9}
          - {name: dark, colour: "#223344", thickness: 0.9}
          - {name: base, colour: "#998877", thickness: 4}
        """);
    Path job = folder.resolve("job.yaml");
    Files.writeString(
        job,
        """
        layup: layup.yaml
        terrain: {file: hill.asc, crs: "EPSG:32632", plies: [pale, dark]}
        panel: {width: 60, height: 60, border: 8%s}
        tools:
          - {name: end mill 3, diameter: 3, flute_length: 12, stepdown: 2, feed: 1800, plunge: 500}
          - {name: end mill 1.5, diameter: 1.5, flute_length: 4, stepdown: 1, feed: 1000, plunge: 300}
        """
                .formatted(panel)
            + more);
    return (PanelPlan)
        Planner.plan(
            JobReader.read(job, List.of(), warnings), PlanOptions.usual(), Progress.NONE, warnings);
  }

  private static BiteRaster cut(PanelPlan plan) {
    BiteRaster wood = new BiteRaster(60, 60);
    for (ToolProgram program : plan.programs()) {
      Program parsed =
          GcodeParser.parse(
              program.file(),
              program.text(),
              plan.job().machine(),
              60,
              60,
              plan.depths().thicknessMm());
      wood.start(parsed.startX(), parsed.startY(), parsed.startDepth());
      for (Program.Block block : parsed.blocks()) {
        double over =
            wood.cut(block.move(), program.tool().radiusMm(), program.tool().stepdownMm() + 0.01);
        assertTrue(over <= 0.1, program.file() + " line " + block.line() + " bites too deep");
      }
    }
    return wood;
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
    BiteRaster wood = cut(plan);
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
      Program parsed =
          GcodeParser.parse(
              program.file(),
              program.text(),
              plan.job().machine(),
              60,
              60,
              plan.depths().thicknessMm());
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
        () -> plan("outline: {tool: end mill 1.5}\n", new Warnings()),
        "flutes too short");
    assertThrows(
        JobFault.class,
        () -> {
          Files.writeString(
              folder.resolve("top.csv"), "x,y,z\n5,5,0\n55,5,0.2\n55,55,0.1\n5,55,0\n");
          plan("outline: {tabs: 2}\n", ", top_map: {file: top.csv}", new Warnings());
        },
        "a panel that is measured by place");
    assertThrows(
        InputFault.class, () -> plan("outline: {tool: saw}\n", new Warnings()), "no such cutter");
    assertThrows(
        InputFault.class,
        () -> plan("outline: {shape: [9, 9, 51, 51, 51, 9, 9, 51]}\n", new Warnings()),
        "crosses itself");
  }
}
