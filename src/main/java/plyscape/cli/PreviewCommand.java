package plyscape.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import plyscape.output.OutputKind;
import plyscape.plan.PlanOptions;

/** {@code plyscape preview}: the picture and the table, without toolpaths. */
@Command(
    name = "preview",
    description = "Only the picture (preview.png, with -o) and the table of plies: fast, no toolpaths.",
    sortOptions = false)
final class PreviewCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;
  @Mixin private JobInputs inputs;

  @Option(names = {"-o", "--output"}, paramLabel = "DIR", description = "Where preview.png goes; without it only the table.")
  private String directory;

  @Option(names = "--force", description = "Replace an earlier preview there.")
  private boolean force;

  @Option(names = "--accept-thickness", description = "Believe a measured thickness far from the nominal one.")
  private boolean acceptThickness;

  @Option(names = "--json", description = "Print the plan as JSON instead of the table.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;
  private final Stages stages;

  PreviewCommand(Console console, Stages stages) {
    this.console = console;
    this.stages = stages;
  }

  @Override
  public Integer call() {
    PlanOptions options = new PlanOptions(true, false, acceptThickness, PlanOptions.usual().simulationCellMm());
    OutputOptions output = new OutputOptions(directory, force);
    List<JobRun> runs = output.runs(spec, stages, inputs.sources(), options, OutputKind.PREVIEW, false);
    JobTalk talk = new JobTalk(console, stages, common, json);
    return runs.size() == 1 ? talk.one(runs.get(0)) : new Batch(console, talk, 1).run(runs);
  }
}
