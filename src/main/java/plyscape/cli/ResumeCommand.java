package plyscape.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plyscape.fault.JobFault;
import plyscape.fault.VerifyFault;
import plyscape.gcode.GcodeHeader;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.Program;
import plyscape.gcode.Restart;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.output.OutputFile;
import plyscape.simulate.Cut;
import plyscape.simulate.HeightField;
import plyscape.simulate.Simulator;
import plyscape.simulate.Verification;
import plyscape.text.Numbers;

/**
 * {@code plyscape resume}: a program that takes a stopped run up again, proven by simulation before
 * it is written.
 */
@Command(
    name = "resume",
    description =
        "A program that goes on where a run stopped: from above, spindle on, down a ramp over what is cut already.",
    sortOptions = false)
final class ResumeCommand implements Callable<Integer> {

  private static final double CELL_MM = 0.1;

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

  ResumeCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Path target = Paths.of(spec, output);
    OutputFile.require(target, force);
    VerifyInput input =
        VerifyInput.read(
            Paths.of(spec, place), List.of(), VerifyCommand.shop(spec, job, List.of()));
    Through stop = Through.line(spec, "--from", from, input);
    VerifyInput.Nc stopped = input.programs().get(stop.program());
    Restart restart = Restart.of(stopped.program(), stop.line(), input.machine());
    if (restart.rest().isEmpty()) {
      throw new JobFault(
          "nothing is left to cut from line " + stop.line() + " of " + stopped.file() + " on",
          "give an earlier line, or run the next program");
    }
    List<Move> moves = restart.moves();
    double deepest = moves.stream().mapToDouble(Move::depth).max().orElse(0);
    double seconds =
        new MotionModel(input.machine())
            .times(
                stopped.program().startX(),
                stopped.program().startY(),
                -input.machine().safeHeightMm(),
                moves)
            .totalS();
    GcodeHeader header =
        new GcodeHeader(
            stopped.file() + " resumed from line " + stop.line(),
            input.plan().widthMm(),
            input.plan().heightMm(),
            input.plan().thicknessMm(),
            input.machine(),
            stopped.tool(),
            deepest,
            seconds,
            VersionText.text());
    String text = GcodeWriter.write(header, restart.passes());
    prove(
        input,
        stop,
        GcodeParser.parse(
            target.getFileName().toString(),
            text,
            input.machine(),
            input.plan().widthMm(),
            input.plan().heightMm(),
            input.plan().thicknessMm()));
    OutputFile.write(target, text, force);
    console.result(
        target
            + ": "
            + moves.size()
            + " moves, about "
            + JobRun.duration(seconds)
            + "; begins at X"
            + Numbers.fixed(restart.x(), 2)
            + " Y"
            + Numbers.fixed(restart.y(), 2)
            + ", "
            + (restart.rampMm() > 0
                ? "comes down along "
                    + Numbers.fixed(restart.rampMm(), 1)
                    + " mm of path that is cut already\n"
                : "with the program's own way down\n"));
    if (!common.quiet()) {
      console.talk("set zero as before, and check it: a stopped machine may have lost steps");
      int rest = input.programs().size() - stop.program() - 1;
      if (rest > 0) {
        console.talk(
            "afterwards the remaining "
                + (rest == 1 ? "program" : rest + " programs")
                + " as planned");
      }
    }
    return ExitCodes.DONE;
  }

  /**
   * Cuts up to the stop and on with the new program: no collision, and the same panel as without
   * the stop.
   */
  private static void prove(VerifyInput input, Through stop, Program resumed) {
    List<Cut> whole = input.cuts().subList(0, stop.program() + 1);
    HeightField wanted = HeightField.uncut(input.setup(CELL_MM).panel(), CELL_MM);
    Simulator.cut(input.setup(CELL_MM), whole, wanted);
    List<Cut> cuts =
        new ArrayList<>(new Through(stop.program(), stop.line() - 1).run(input.cuts()));
    cuts.add(new Cut(resumed, input.programs().get(stop.program()).tool()));
    HeightField made = HeightField.uncut(input.setup(CELL_MM).panel(), CELL_MM);
    List<Verification.Collision> collisions =
        Simulator.cut(input.setup(CELL_MM), cuts, made).stream()
            .filter(c -> c.file().equals(resumed.file()))
            .toList();
    if (!collisions.isEmpty()) {
      Verification.Collision c = collisions.get(0);
      throw new VerifyFault(
          "the restart failed its simulation and was not written: line "
              + c.line()
              + ", X"
              + Numbers.fixed(c.x(), 2)
              + " Y"
              + Numbers.fixed(c.y(), 2)
              + ": "
              + c.what(),
          "choose an earlier line");
    }
    int different = 0;
    for (int i = 0; i < wanted.depth().length; i++) {
      different += Math.abs(wanted.depth()[i] - made.depth()[i]) > 0.01 ? 1 : 0;
    }
    double area = different * wanted.cellAreaMm2();
    if (area > 0.25) {
      throw new VerifyFault(
          "the restart failed its simulation and was not written: "
              + Numbers.fixed(area, 2)
              + " mm2 would differ from the plan",
          "choose an earlier line");
    }
  }
}
