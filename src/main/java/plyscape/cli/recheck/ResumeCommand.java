package plyscape.cli.recheck;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.option.Paths;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.process.VersionText;
import plyscape.cli.talk.Console;
import plyscape.fault.JobFault;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.Program;
import plyscape.gcode.ProgramHead;
import plyscape.gcode.Restart;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.output.OutputFile;
import plyscape.recheck.RestartProof;
import plyscape.recheck.StopPoint;
import plyscape.recheck.WrittenPlan;
import plyscape.recheck.WrittenPlanReader;
import plyscape.text.Durations;
import plyscape.text.Template;

/**
 * {@code plyscape resume}: a program that takes a stopped run up again, proven by simulation before
 * it is written.
 */
@Command(
    name = "resume",
    description =
        "A program that goes on where a run stopped: from above, spindle on, down a ramp over what"
            + " is cut already.",
    sortOptions = false)
public final class ResumeCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "DIR | PLAN.json", description = "What plan wrote.")
  private String place;

  @Option(
      names = "--from",
      paramLabel = "[FILE:]LINE",
      required = true,
      description = "The line at which the run stopped; if unsure, an earlier one.")
  private String from;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE.nc",
      required = true,
      description = "The new program.")
  private String output;

  @Option(names = "--force", description = "Replace an earlier one.")
  private boolean force;

  @Option(
      names = "--job",
      paramLabel = "JOB.yaml",
      description = "Take tools and machine from a job, not from the programs' heads.")
  private String job;

  @Mixin private CommonOptions common;

  private final Console console;

  public ResumeCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Path target = Paths.of(spec, output);
    OutputFile.require(target, force);
    WrittenPlan plan =
        WrittenPlanReader.read(
            Paths.of(spec, place), List.of(), VerifyCommand.knownTools(spec, job, List.of()));
    StopPoint stop = StopPoint.line("--from", from, plan);
    WrittenPlan.WrittenProgram stopped = plan.programs().get(stop.program());
    Restart restart = Restart.of(stopped.program(), stop.line(), plan.machine(), plan.face());
    if (restart.rest().isEmpty()) {
      throw new JobFault(
          "nothing is left to cut from line " + stop.line() + " of " + stopped.file() + " on",
          "give an earlier line, or run the next program");
    }
    ProgramHead head = head(plan, stopped, stop, restart);
    String text = GcodeWriter.write(head, restart.passes());
    RestartProof.require(plan, stop, parsed(target, text, plan));
    OutputFile.write(target, text, force);
    console.result(target + ": " + words(restart, head.timeS()));
    if (!common.quiet()) {
      console.talk("set zero as before, and check it: a stopped machine may have lost steps");
      int rest = plan.programs().size() - stop.program() - 1;
      if (rest > 0) {
        console.talk(
            "afterwards the remaining "
                + (rest == 1 ? "program" : rest + " programs")
                + " as planned");
      }
    }
    return ExitCodes.DONE;
  }

  private static ProgramHead head(
      WrittenPlan plan, WrittenPlan.WrittenProgram stopped, StopPoint stop, Restart restart) {
    double seconds =
        new MotionModel(plan.machine())
            .times(
                stopped.program().startX(),
                stopped.program().startY(),
                -plan.machine().safeHeightMm(),
                restart.moves())
            .totalS();
    return new ProgramHead(
        stopped.file() + " resumed from line " + stop.line(),
        plan.plan().widthMm(),
        plan.plan().heightMm(),
        plan.plan().thicknessMm(),
        plan.machine(),
        stopped.tool(),
        restart.moves().stream().mapToDouble(Move::depth).max().orElse(0),
        seconds,
        VersionText.text(),
        List.of());
  }

  private static Program parsed(Path target, String text, WrittenPlan plan) {
    return GcodeParser.parse(
        target.getFileName().toString(),
        text,
        plan.machine(),
        plan.plan().widthMm(),
        plan.plan().heightMm(),
        plan.plan().thicknessMm());
  }

  private static String words(Restart restart, double seconds) {
    return Template.fill(
        "%s moves, about %s; begins at X%.2f Y%.2f, %s",
        restart.moves().size(),
        Durations.text(seconds),
        restart.x(),
        restart.y(),
        restart.rampMm() > 0
            ? Template.fill(
                "comes down along %.1f mm of path that is cut already\n", restart.rampMm())
            : "with the program's own way down\n");
  }
}
