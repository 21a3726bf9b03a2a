package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plyscape.files.PlanFiles;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeText;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.PassComment;
import plyscape.gcode.PassText;
import plyscape.gcode.Program;
import plyscape.gcode.ProgramHead;
import plyscape.gcode.SpindleStart;
import plyscape.job.Job;
import plyscape.layup.Depths;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Times;
import plyscape.machine.Tool;
import plyscape.plan.Landscape;
import plyscape.plan.MotionSpan;
import plyscape.plan.PathFigures;
import plyscape.plan.ToolProgram;
import plyscape.plan.Version;
import plyscape.toolpath.face.PanelFit;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * Turns a tool's passes into the text of its file, and sums the passes up from that text as it is
 * read back.
 */
final class ProgramMaker {

  /** A written program and what the parser makes of it. */
  record Made(ToolProgram written, Program parsed) {}

  private final Job job;
  private final Depths depths;
  private final double thicknessMm;
  private final PanelMoves moves;

  /** Of a panel's programs. */
  ProgramMaker(Landscape panel) {
    this.job = panel.job();
    this.depths = panel.depths();
    this.thicknessMm = panel.thicknessMm();
    this.moves = new PanelMoves(panel);
  }

  /** The job's cutters as the flat plan may use them. */
  List<Tool> tools() {
    return moves.planned();
  }

  /** How the flat plan is cut into the panel as it lies. */
  PanelFit fit() {
    return moves;
  }

  /** Runs as they are cut. */
  List<ToolRun> cut(List<ToolRun> flat) {
    return flat.stream().map(moves::cut).toList();
  }

  /**
   * Makes the file of the number-th tool in cutting order, from 1, from its run in the flat plan.
   */
  Made make(int number, ToolRun flat) {
    ToolRun run = moves.cut(flat);
    GcodeText text = GcodeWriter.lined(head(run), texts(run));
    String file = PlanFiles.passName(number, run.tool().name());
    Program parsed =
        GcodeParser.parse(
            file,
            text.text(),
            job.machine(),
            job.panel().widthMm(),
            job.panel().heightMm(),
            thicknessMm);
    return new Made(
        new ToolProgram(
            file,
            run.tool(),
            text.text(),
            summaries(run, text, parsed),
            PathFigures.of(file, run.tool(), text.text(), parsed),
            MotionSpan.whole(parsed),
            // Moves at safe height itself are over whatever is lower; the last digit is rounded.
            MotionSpan.below(parsed, -job.machine().safeHeightMm() + 0.001)),
        parsed);
  }

  private List<PassText> texts(ToolRun run) {
    return run.passes().stream().map(pass -> new PassText(comment(pass), pass.moves())).toList();
  }

  private ProgramHead head(ToolRun run) {
    List<Move> all = run.passes().stream().flatMap(pass -> pass.moves().stream()).toList();
    double safe = -job.machine().safeHeightMm();
    return new ProgramHead(
        job.name(),
        job.panel().widthMm(),
        job.panel().heightMm(),
        thicknessMm,
        job.machine(),
        run.tool(),
        run.passes().stream().mapToDouble(Pass::depthMm).reduce(0, Math::max),
        new MotionModel(job.machine()).times(0, 0, safe, all).totalS(),
        Version.TEXT,
        run.passes().stream()
            .map(pass -> Cutouts.caution(pass.kind()))
            .flatMap(Optional::stream)
            .distinct()
            .toList());
  }

  private String comment(Pass pass) {
    if (pass.kind() == Pass.Kind.PINS) {
      return PassComment.pins(job.additions().pins().diameterMm(), pass.depthMm());
    }
    if (pass.kind() == Pass.Kind.OUTLINE) {
      return PassComment.outline(pass.depthMm(), pass.stepdownFromMm());
    }
    if (pass.finishing()) {
      return PassComment.sculpted(pass.stepdownFromMm(), pass.depthMm(), job.surface().cuspMm());
    }
    return PassComment.flat(
        pass.plyNumber(),
        depths.of(pass.plyNumber()).ply().name(),
        pass.depthMm(),
        pass.stepdownFromMm());
  }

  private List<ToolProgram.PassSummary> summaries(ToolRun run, GcodeText text, Program parsed) {
    List<Move> moves = parsed.blocks().stream().map(Program.Block::move).toList();
    double safe = -job.machine().safeHeightMm();
    Times times =
        new MotionModel(job.machine()).times(parsed.startX(), parsed.startY(), safe, moves);
    List<ToolProgram.PassSummary> summaries = new ArrayList<>();
    int start = SpindleStart.block(parsed);
    int block = 0;
    PassTally tally = new PassTally(parsed.startX(), parsed.startY(), safe);
    for (int p = 0; p < run.passes().size(); p++) {
      int nextLine =
          p + 1 < text.passLines().size() ? text.passLines().get(p + 1) : Integer.MAX_VALUE;
      tally.reset(run.passes().get(p).finishing());
      for (; block < moves.size() && parsed.blocks().get(block).line() < nextLine; block++) {
        tally.add(moves.get(block), block == start ? 0 : times.moveS()[block]);
      }
      Pass pass = run.passes().get(p);
      summaries.add(tally.summary(pass.plyNumber(), pass.depthMm(), pass.stepdownFromMm()));
    }
    return List.copyOf(summaries);
  }
}
