package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import plyscape.fault.Warnings;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.Program;
import plyscape.job.JobReader;
import plyscape.plan.Landscape;
import plyscape.plan.PanelPlan;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.plan.ToolProgram;
import plyscape.plan.UsualOptions;
import plyscape.planner.cut.BiteRaster;

/** A job of a few small files in a folder, and the panel that its programs cut. */
final class SmallJob {

  /** Two thin plies over a thick one. */
  static final String THREE_PLIES =
      """
      name: three
      plies:
        - {name: pale, colour: "#eeeeee", thickness: 0.9}
        - {name: dark, colour: "#223344", thickness: 0.9}
        - {name: base, colour: "#998877", thickness: 4}
      """;

  private final Path folder;

  SmallJob(Path folder, String layup) throws IOException {
    this.folder = folder;
    with("layup.yaml", layup);
  }

  /** Writes one more of its files. */
  SmallJob with(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
    return this;
  }

  /** Level ground of 2 x 2 cells. */
  SmallJob onFlat(int cellM) throws IOException {
    return with(
        "flat.asc",
        "ncols 2\nnrows 2\nxllcorner 500000\nyllcorner 5600000\ncellsize "
            + cellM
            + "\n10 10\n10 10\n");
  }

  /** Plans it all. */
  PanelPlan plan(String job, Warnings warnings) throws IOException {
    return (PanelPlan) run(job, UsualOptions.WHOLE, warnings);
  }

  /** Stops after the regions. */
  Landscape preview(String job, Warnings warnings) throws IOException {
    return run(job, PlanOptions.preview(Set.of()), warnings).landscape();
  }

  private Plan run(String job, PlanOptions options, Warnings warnings) throws IOException {
    with("job.yaml", job);
    return Planner.plan(
        JobReader.read(folder.resolve("job.yaml"), List.of(), warnings),
        options,
        Progress.NONE,
        warnings);
  }

  /** Cuts a plan's programs into wood and holds each move to its cutter's stepdown. */
  static BiteRaster cut(PanelPlan plan, BiteRaster wood) {
    for (ToolProgram program : plan.programs()) {
      Program parsed = parsed(plan, program);
      wood.start(parsed.startX(), parsed.startY(), parsed.startDepth());
      for (Program.Block block : parsed.blocks()) {
        double over =
            wood.cut(block.move(), program.tool().radiusMm(), program.tool().stepdownMm() + 0.01);
        assertTrue(over <= 0.1, program.file() + " line " + block.line() + " bites too deep");
      }
    }
    return wood;
  }

  /** One of a plan's programs, read back from its text. */
  static Program parsed(PanelPlan plan, ToolProgram program) {
    return GcodeParser.parse(
        program.file(),
        program.text(),
        plan.job().machine(),
        plan.job().panel().widthMm(),
        plan.job().panel().heightMm(),
        plan.depths().thicknessMm());
  }
}
