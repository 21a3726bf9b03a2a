package plyscape.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.Program;
import plyscape.job.Job;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.planner.Planner;
import plyscape.planner.SeededJob;

/** Figures of a program written by hand, worked out beside it, and bounds on those of a plan. */
class PathFiguresTest {

  private static final String TEXT =
      """
      G17 G21 G90 G94 G54
      M3 S16000
      G0 Z4
      G0 X10 Y10
      G1 Z-1 F500
      G1 X20 Y10 F1800
      G1 X26 Y10 F900
      G1 X26 Y12 F1200
      G3 X26 Y32 I0 J10 F1800
      G0 Z4
      G0 X26 Y42
      G1 Z-1 F500
      G1 X26 Y45 F600
      G0 Z4
      M5
      M30
      """;

  @Test
  void handWrittenProgram_givesWhatIsReckoned(@TempDir Path folder) {
    PanelPlan plan = plan(folder, 0);
    Tool tool = Workshop.END_MILL_3;
    Job job = plan.job();
    Job.PanelSpec panel = job.panel();
    Program parsed =
        GcodeParser.parse(
            "01.nc",
            TEXT,
            job.machine(),
            panel.widthMm(),
            panel.heightMm(),
            plan.depths().thicknessMm());
    PathFigures f = PathFigures.of("01.nc", tool, TEXT, parsed);
    // From the zero to (10, 10), from (26, 32) to (26, 42).
    assertEquals(Math.hypot(10, 10) + 10, f.way().travelMm(), 1e-6);
    assertEquals(Math.hypot(10, 10) + 10, f.way().boundMm(), 1e-6);
    assertEquals(TEXT.length(), f.size().bytes());
    // A half circle of radius 10 in chords 0.005 off: pi / (2 acos(1 - 0.0005)) = 49.7.
    int arc = "G3 X26 Y32 I0 J10 F1800\n".length();
    double line = TEXT.length() / 17.0;
    assertEquals(TEXT.length() - arc + 50 * line, f.size().plainBytes(), 1);
    assertEquals(10 + 6 + 2 + Math.PI * 10 + 3, f.width().cutMm(), 1e-3);
    assertEquals(6 + 2 + 3, f.width().wideMm(), 1e-6);
    assertEquals(8, f.width().longest().mm(), 1e-6);
    assertEquals(20, f.width().longest().x(), 1e-6);
    // The seed's zero is the upper left corner.
    assertEquals(10 + panel.heightMm(), f.width().longest().y(), 1e-6);
    assertEquals(900, f.width().longest().feed(), 1e-6);
  }

  @Test
  void plannedPrograms_travelAtLeastTheBoundAndArcsSpareSpace(@TempDir Path folder) {
    for (ToolProgram program : plan(folder, 1).programs()) {
      PathFigures f = program.paths();
      assertTrue(f.way().travelMm() >= f.way().boundMm() - 1e-6, f.toString());
      // A cutter of few rests may have no arcs.
      boolean arcs = Pattern.compile("^G[23] ", Pattern.MULTILINE).matcher(program.text()).find();
      assertEquals(arcs, f.size().plainBytes() > f.size().bytes(), f.toString());
      assertTrue(
          f.width().wideMm() < f.width().cutMm()
              && f.width().longest().mm() <= f.width().wideMm() + 1e-9,
          f.toString());
    }
  }

  private static PanelPlan plan(Path folder, long seed) {
    Job job = new SeededJob(seed).in(folder);
    return (PanelPlan) Planner.plan(job, UsualOptions.WHOLE, Progress.NONE, new Warnings());
  }
}
