package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.Program;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.plan.PanelPlan;
import plyscape.plan.Progress;
import plyscape.plan.ToolProgram;
import plyscape.plan.UsualOptions;
import plyscape.planner.cut.BiteRaster;
import plyscape.terrain.AscText;

/**
 * The promise of {@code stepdown}: no move of a program takes more than that of its cutter in depth
 * at any place. The text is parsed and cut into a raster of the test's own.
 */
class StepdownTest {

  /**
   * Cells by the walls that two passes of different depth share: the edge of the cutter goes along
   * their middles, and the last decimal of a program decides which pass has them.
   */
  private static final double GRAIN_MM2 = 0.3;

  private static final String TOOLS =
      """
      tools:
        - {name: six, diameter: 6, flute_length: 20, stepdown: 2, stepover: 0.45, feed: 1800}
        - {name: two, diameter: 2, flute_length: 10, stepdown: 1, stepover: 0.45, feed: 1200}
      """;

  private static final String LAYUP =
      """
      glue_line: 0.04
      plies:
        - {name: one, colour: "#dddddd", thickness: 0.9}
        - {name: two, colour: "#448844", thickness: 0.9}
        - {name: three, colour: "#884422", thickness: 0.9}
        - {name: four, colour: "#2244aa", thickness: 0.9}
        - {name: five, colour: "#aa8866", thickness: 0.9}
        - {name: six, colour: "#66aa88", thickness: 0.9}
        - {name: back, colour: "#8866aa", thickness: 2}
      """;

  /** 48 x 36 mm at 12.5 m a mm; a deep lake with islands, a channel barely as wide as a cutter. */
  private static final String LAKES =
      """
      {"type": "FeatureCollection", "crs": {"type": "name", "properties": {"name": "EPSG:32632"}},
       "features": [
       {"type": "Feature", "properties": {"k": "shore"}, "geometry": {"type": "Polygon",
        "coordinates": [[[20, 20], [580, 20], [580, 420], [20, 430], [20, 20]]]}},
       {"type": "Feature", "properties": {"k": "lake"}, "geometry": {"type": "Polygon",
        "coordinates": [[[40, 40], [400, 60], [420, 300], [300, 400], [60, 380], [40, 40]],
         [[120, 120], [150, 120], [150, 150], [120, 150], [120, 120]],
         [[200, 180], [290, 200], [250, 290], [200, 260], [200, 180]],
         [[303, 205], [330, 200], [330, 260], [280, 262], [303, 205]]]}},
       {"type": "Feature", "properties": {"k": "channel"}, "geometry": {"type": "LineString",
        "coordinates": [[400, 200], [480, 210], [500, 330], [560, 350]]}},
       {"type": "Feature", "properties": {"k": "channel"}, "geometry": {"type": "LineString",
        "coordinates": [[410, 100], [560, 130]]}}]}
      """;

  private static final String ZONES =
      """
      zones:
        - {name: shore, file: lakes.geojson, where: {k: shore}, ply: three}
        - {name: channel, file: lakes.geojson, where: {k: channel}, ply: five, width: 2.4}
        - {name: lake, file: lakes.geojson, where: {k: lake}, ply: six}
      """;

  @TempDir Path folder;

  @Test
  void flatZones_withIslandsAndNarrowPlaces() throws IOException {
    hold(job((x, y) -> x, "terrain: {plies: [one]", ZONES));
  }

  @Test
  void roughGround() throws IOException {
    hold(
        job(
            (x, y) ->
                80 * Math.sin(x / 9.0) * Math.cos(y / 7.0)
                    + 50 * Math.sin(x / 2.7 + y / 4.1)
                    + 25 * Math.cos(x / 1.9 - y / 1.3),
            "terrain: {plies: [one, two, three, four, five, six], smoothing: 0.3",
            ""));
  }

  private Job job(AscText.Ground ground, String terrain, String zones) throws IOException {
    Files.writeString(folder.resolve("ground.asc"), AscText.of(60, 45, ground));
    Files.writeString(folder.resolve("lakes.geojson"), LAKES);
    Files.writeString(folder.resolve("layup.yaml"), LAYUP);
    Path file =
        Files.writeString(
            folder.resolve("job.yaml"),
            "layup: layup.yaml\n"
                + terrain
                + ", file: ground.asc, crs: 'EPSG:32632'}\n"
                + "panel: {width: 48, height: 36, border: 0}\n"
                + zones
                + TOOLS);
    return JobReader.read(file, List.of(), new Warnings());
  }

  private static void hold(Job job) {
    PanelPlan plan =
        (PanelPlan) Planner.plan(job, UsualOptions.WHOLE, Progress.NONE, new Warnings());
    assertEquals(2, plan.programs().size(), "both cutters are used");
    assertEquals(List.of(), tooDeep(plan, plan.programs()));

    List<ToolProgram> spoiled = new ArrayList<>(plan.programs());
    spoiled.set(0, withoutFirstPass(spoiled.get(0)));
    assertFalse(tooDeep(plan, spoiled).isEmpty(), "a program without its first pass is found out");
  }

  private static ToolProgram withoutFirstPass(ToolProgram program) {
    int first = program.text().indexOf("(ply ");
    int second = program.text().indexOf("(ply ", first + 1);
    String text = program.text().substring(0, first) + program.text().substring(second);
    return new ToolProgram(
        program.file(),
        program.tool(),
        text,
        program.passes(),
        program.paths(),
        program.way(),
        program.low());
  }

  /** Moves that take more than the stepdown, beyond the grain of the raster. */
  private static List<String> tooDeep(PanelPlan plan, List<ToolProgram> programs) {
    Job job = plan.job();
    BiteRaster wood = new BiteRaster(job.panel().widthMm(), job.panel().heightMm());
    List<String> faults = new ArrayList<>();
    for (ToolProgram program : programs) {
      Program parsed =
          GcodeParser.parse(
              program.file(),
              program.text(),
              job.machine(),
              job.panel().widthMm(),
              job.panel().heightMm(),
              plan.depths().thicknessMm());
      wood.start(parsed.startX(), parsed.startY(), parsed.startDepth());
      for (Program.Block block : parsed.blocks()) {
        double area =
            wood.cut(block.move(), program.tool().radiusMm(), program.tool().stepdownMm() + 0.01);
        if (area > GRAIN_MM2) {
          faults.add(
              String.format(
                  Locale.ROOT,
                  "%s line %d: %.2f mm2 deeper than the stepdown",
                  program.file(),
                  block.line(),
                  area));
        }
      }
    }
    return faults;
  }
}
