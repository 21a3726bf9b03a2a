package plyscape.cli.recheck;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.option.Paths;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.cli.talk.JsonText;
import plyscape.fault.VerifyFault;
import plyscape.job.Bench;
import plyscape.job.JobReader;
import plyscape.output.OutputFile;
import plyscape.recheck.KnownTools;
import plyscape.recheck.Outcome;
import plyscape.recheck.OutcomeJson;
import plyscape.recheck.OutcomeText;
import plyscape.recheck.StopPoint;
import plyscape.recheck.WrittenPlan;
import plyscape.recheck.WrittenPlanReader;
import plyscape.render.DifferencePicture;
import plyscape.report.json.PlanFigures;
import plyscape.simulate.CutResult;

/** {@code plyscape verify}: cuts programs in simulation and compares the panel with a plan. */
@Command(
    name = "verify",
    description =
        "Cut G-code in simulation and compare the panel with the plan; exit code 3 when it isn't as"
            + " planned.",
    sortOptions = false)
public final class VerifyCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "DIR | PLAN.json",
      description = "What plan wrote: its directory, or its plan.json.")
  private String place;

  @Parameters(
      index = "1..*",
      paramLabel = "NC",
      description = "Programs in cutting order, of any origin; without them the plan's own.")
  private List<String> ncFiles = new ArrayList<>();

  @Option(
      names = "--cell",
      paramLabel = "MM",
      defaultValue = "0.1",
      description = "Cell of the simulation, 0.05 to 0.2 mm; default ${DEFAULT-VALUE}.")
  private double cellMm;

  @Option(
      names = "--tool",
      paramLabel = "TOOL",
      description =
          "Tool of the first program; again for the next: a tool's name, or flat:3, ball:6,"
              + " tapered:6:20:0.5:10 (diameter, flutes, tip, degrees).")
  private List<String> tools = new ArrayList<>();

  @Option(
      names = "--job",
      paramLabel = "JOB.yaml",
      description = "Take tools and machine from a job, not from the programs' heads.")
  private String job;

  @Option(
      names = "--through",
      paramLabel = "[FILE:]LINE",
      description = "Stop after this line: the panel of a run that was stopped there.")
  private String through;

  @Option(
      names = "--through-pass",
      paramLabel = "N",
      description = "Stop after this pass, counted as in plan.json from 1.")
  private Integer throughPass;

  @Option(
      names = "--flat",
      description = "Judge the programs in a flat panel, whatever the plan knows of how it lies.")
  private boolean flat;

  @Option(
      names = "--picture",
      paramLabel = "FILE.png",
      description =
          "Draw where the panel differs: red too deep, blue left standing, violet out of reach.")
  private String picture;

  @Option(names = "--force", description = "Replace an earlier picture.")
  private boolean force;

  @Option(names = "--json", description = "Print the outcome as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;

  public VerifyCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (!(cellMm >= 0.05 && cellMm <= 0.2)) {
      throw new ParameterException(
          spec.commandLine(), "found --cell " + cellMm + "; wanted 0.05 to 0.2 mm");
    }
    if (through != null && throughPass != null) {
      throw new ParameterException(
          spec.commandLine(), "--through and --through-pass exclude each other");
    }
    Path drawing = picture == null ? null : Paths.of(spec, picture);
    if (drawing != null) {
      OutputFile.require(drawing, force);
    }
    List<Path> files = ncFiles.stream().map(f -> Paths.of(spec, f)).toList();
    WrittenPlan plan =
        WrittenPlanReader.read(Paths.of(spec, place), files, knownTools(spec, job, tools));
    plan = flat ? plan.flat() : plan;
    Outcome outcome = Outcome.of(plan, stop(plan), cellMm);
    console.result(json ? json(outcome) : OutcomeText.of(outcome, common.verbose()));
    if (drawing != null) {
      OutputFile.write(drawing, png(outcome), force);
      if (!common.quiet()) {
        console.talk("wrote " + drawing);
      }
    }
    if (!outcome.faults().isEmpty()) {
      throw new VerifyFault(
          "not as planned: " + String.join("; ", outcome.faults()), "the list above says where");
    }
    return ExitCodes.DONE;
  }

  /** Where the run is to stop, or null. */
  private StopPoint stop(WrittenPlan plan) {
    if (through != null) {
      return StopPoint.line("--through", through, plan);
    }
    return throughPass == null ? null : StopPoint.pass("--through-pass", throughPass, plan);
  }

  private static String json(Outcome outcome) {
    ObjectNode root = JsonText.object(OutcomeJson.SCHEMA);
    OutcomeJson.put(outcome, root);
    return JsonText.of(root);
  }

  /** Tools and machine of a job, if one is given, and tools asked for. */
  static KnownTools knownTools(CommandSpec spec, String job, List<String> tools) {
    if (job == null) {
      return new KnownTools(null, List.of(), tools);
    }
    Bench bench = JobReader.bench(Paths.of(spec, job), List.of());
    return new KnownTools(bench.machine(), bench.tools(), tools);
  }

  private static byte[] png(Outcome outcome) {
    CutResult result = outcome.result();
    List<PlanFigures.PlyFigures> plies = outcome.plan().plan().plies();
    int[] colours =
        outcome.plan().targets().stream()
            .mapToInt(
                t ->
                    colour(
                        plies.stream()
                            .filter(p -> p.number() == t.plyNumber())
                            .findFirst()
                            .orElseThrow()))
            .toArray();
    var frame = result.field().frame();
    DifferencePicture.Cells cells =
        new DifferencePicture.Cells(
            frame.columns(), frame.rows(), frame.cellX(), result.verdicts(), result.targetOf());
    return DifferencePicture.png(cells, colours, colour(plies.get(0)));
  }

  private static int colour(PlanFigures.PlyFigures ply) {
    try {
      return Integer.parseInt(ply.colour().replaceFirst("^#", ""), 16) & 0xffffff;
    } catch (NumberFormatException e) {
      return 0xcccccc; // a plan from elsewhere may have other words for colours
    }
  }
}
