package plyscape.cli.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import plyscape.cli.option.Paths;
import plyscape.output.OutputKind;
import plyscape.plan.PlanOptions;

/** Where output goes, and whether an earlier one may be replaced. */
final class OutputOptions {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description =
          "Output directory, new or empty; with several jobs one directory a job is made in it.")
  private String directory;

  @Option(names = "--force", description = "Replace an earlier output, once the new one is whole.")
  private boolean force;

  OutputOptions() {}

  OutputOptions(String directory, boolean force) {
    this.directory = directory;
    this.force = force;
  }

  /** The directory as given. */
  Path directory(CommandSpec spec) {
    return Paths.of(spec, directory);
  }

  /** Refuses a command line that doesn't say where. */
  void require(CommandSpec spec) {
    if (directory == null) {
      throw new MissingParameterException(
          spec.commandLine(),
          spec.findOption("--output"),
          "Missing required option: '--output=DIR'");
    }
  }

  /** One run a job; with several a directory each. */
  List<JobRun> runs(
      CommandSpec spec,
      Stages stages,
      List<JobInputs.Source> sources,
      PlanOptions options,
      OutputKind kind,
      boolean dry) {
    List<JobRun> runs = new ArrayList<>();
    for (JobInputs.Source source : sources) {
      Path base = directory == null ? null : directory(spec);
      Path own = base == null || sources.size() == 1 ? base : base.resolve(source.name());
      JobRun.Target target = new JobRun.Target(own, kind, force, dry, JobRun.Reuse.PANELS);
      runs.add(new JobRun(stages, source, options, target));
    }
    return runs;
  }
}
