package plyscape.cli.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import plyscape.batch.Share;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.talk.Console;
import plyscape.output.OutputKind;
import plyscape.plan.Acceptance;
import plyscape.plan.PlanOptions;

/** {@code plyscape plan}: the main job, for one panel or several. */
@Command(
    name = "plan",
    customSynopsis = {
      "plyscape plan JOB.yaml... -o DIR [OPTION]...",
      "plyscape plan TERRAIN LAYUP.yaml -o DIR [OPTION]...",
      "plyscape plan --list FILE -o DIR [OPTION]...",
      "plyscape plan JOB.yaml --each CSV -o DIR [OPTION]...",
      "plyscape plan JOB.yaml --try-cutters [OPTION]..."
    },
    description =
        "Depths, layers, G-code, pictures and report for a panel. The G-code is cut in simulation"
            + " before it is written.",
    sortOptions = false)
public final class PlanCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;
  @Mixin private JobInputs inputs;
  @Mixin private OutputOptions output;

  @Option(
      names = "--strict",
      description = "A ply too thin to hit surely is a fault, not a warning.")
  private boolean strict;

  @Mixin private AcceptOptions accept;

  @Option(
      names = "--accept-short-flutes",
      description =
          "Leave uncut what no cutter's flutes reach, and believe cutters that stick out too"
              + " little.")
  private boolean acceptShortFlutes;

  @Option(
      names = "--cell",
      paramLabel = "MM",
      defaultValue = "0.1",
      description = "Cell of the simulation, 0.05 to 0.2 mm; default ${DEFAULT-VALUE}.")
  private double cellMm;

  @Option(names = "--json", description = "Print plan.json instead of the table of plies.")
  private boolean json;

  @Option(
      names = "--try-cutters",
      description =
          "Plan with a common cutter more, and with one of the job's less, and print what each"
              + " takes and loses; write nothing.")
  private boolean tryCutters;

  @Option(names = "--dry-run", description = "Do everything but write; list what would be written.")
  private boolean dry;

  @Option(
      names = "--jobs",
      paramLabel = "N",
      defaultValue = "1",
      description = "With several jobs, how many to run at a time; default ${DEFAULT-VALUE}.")
  private int atATime;

  @Option(
      names = "--layers",
      paramLabel = "FORMAT",
      split = ",",
      description =
          "Also write the layers as geojson or dxf beside the SVG, or as one sheet with"
              + " registration marks; with commas.")
  private List<LayerFormat> layers = List.of();

  @Option(
      names = "--pictures",
      paramLabel = "WHAT",
      split = ",",
      description =
          "Also draw the panel as a block with the stripes on its walls, or the risk map; with"
              + " commas.")
  private List<PictureKind> pictures = List.of();

  /** Forms of the layers beside the SVG files. */
  enum LayerFormat {
    /** What is always written. */
    SVG,
    GEOJSON,
    DXF,
    SHEET
  }

  /** Pictures beside the usual ones. */
  enum PictureKind {
    BLOCK,
    RISK
  }

  @Mixin private SeriesOptions series;

  @Mixin private CommonOptions common;

  private final Console console;
  private final Stages stages;

  public PlanCommand(Console console, Stages stages) {
    this.console = console;
    this.stages = stages;
  }

  @Override
  public Integer call() {
    if (!(cellMm >= 0.05 && cellMm <= 0.2)) {
      throw new ParameterException(
          spec.commandLine(), "found --cell " + cellMm + "; wanted 0.05 to 0.2 mm");
    }
    if (atATime < 1 || atATime > 64) {
      throw new ParameterException(
          spec.commandLine(), "found --jobs " + atATime + "; wanted 1 to 64");
    }
    if (!tryCutters) {
      output.require(spec);
    }
    List<JobInputs.Source> sources = inputs.sources();
    if (SecondCompiler.missing(series.share(spec).of(sources))) {
      return SecondCompiler.run(spec.root().commandLine().getParseResult().originalArgs());
    }
    inputs.check();
    Set<Acceptance> accepted = accept.accepted();
    if (acceptShortFlutes) {
      accepted.add(Acceptance.SHORT_FLUTES);
    }
    PlanOptions options = new PlanOptions(false, strict, accepted, cellMm);
    if (tryCutters) {
      return tryCutters(sources, options);
    }
    Set<ExtraFile> extras = EnumSet.noneOf(ExtraFile.class);
    layers.stream()
        .filter(format -> format != LayerFormat.SVG)
        .forEach(format -> extras.add(ExtraFile.valueOf(format.name())));
    pictures.forEach(kind -> extras.add(ExtraFile.valueOf(kind.name())));
    Stages all = new TiledStages(extras.isEmpty() ? stages : new ExtraStages(stages, extras));
    JobTalk talk = new JobTalk(console, all, common, json);
    if (sources.size() == 1 && !inputs.listed() && !series.shared()) {
      JobRun run = output.runs(spec, all, sources, options, OutputKind.PLAN, dry).get(0);
      return talk.one(series.all() ? run.anew() : run);
    }
    return batch(talk, all, sources, options);
  }

  /** Several jobs: an earlier output of our own that no longer holds is replaced. */
  private int batch(JobTalk talk, Stages all, List<JobInputs.Source> sources, PlanOptions options) {
    Path folder = output.directory(spec);
    Share share = series.share(spec);
    List<JobRun> runs = new ArrayList<>();
    for (JobInputs.Source source : share.of(sources)) {
      Path own = folder.resolve(source.name());
      JobRun.Target target =
          new JobRun.Target(
              own,
              OutputKind.PLAN,
              true,
              dry,
              series.all() || dry ? JobRun.Reuse.NOTHING : JobRun.Reuse.OUTPUT);
      runs.add(new JobRun(all, source, options, target));
    }
    List<String> names = sources.stream().map(JobInputs.Source::name).toList();
    Batch batch = new Batch(console, talk, atATime);
    return SeriesOptions.run(batch, runs, dry ? null : folder, share, names);
  }

  private int tryCutters(List<JobInputs.Source> sources, PlanOptions options) {
    if (sources.size() > 1) {
      throw new ParameterException(
          spec.commandLine(), "found " + sources.size() + " jobs; --try-cutters takes one");
    }
    return new TryCutters(console, common, json).run(sources.get(0), options);
  }
}
