package plyscape.cli.job;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.talk.Console;
import plyscape.output.OutputKind;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.render.TerminalPreview;

/** {@code plyscape preview}: the picture and the table, without toolpaths. */
@Command(
    name = "preview",
    customSynopsis = {
      "plyscape preview JOB.yaml... [-o DIR] [OPTION]...",
      "plyscape preview TERRAIN LAYUP.yaml [-o DIR] [OPTION]..."
    },
    description =
        "Only the picture (preview.png, with -o) and the table of plies: fast, no toolpaths.",
    sortOptions = false)
public final class PreviewCommand implements Callable<Integer> {

  private static final int USUAL_COLUMNS = 72;

  /** Wider pictures would be higher than most windows. */
  private static final int WIDEST_COLUMNS = 160;

  @Spec private CommandSpec spec;
  @Mixin private JobInputs inputs;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description = "Where preview.png goes; without it only the table.")
  private String directory;

  @Option(names = "--force", description = "Replace an earlier preview there.")
  private boolean force;

  @Mixin private AcceptOptions accept;

  @Option(names = "--json", description = "Print the plan as JSON instead of the table.")
  private boolean json;

  @Option(
      names = "--picture",
      paramLabel = "HOW",
      defaultValue = "auto",
      description = "Picture above the table: auto (on a terminal), colour, letters or no.")
  private Picture picture;

  @Option(
      names = "--columns",
      paramLabel = "N",
      description = "Width of that picture; default the terminal's, or 72.")
  private Integer columns;

  @Option(
      names = "--watch",
      description = "Draw again whenever the job, the layup, the terrain or a map changes.")
  private boolean watch;

  /** How the picture goes to the terminal. */
  enum Picture {
    AUTO,
    COLOUR,
    LETTERS,
    NO
  }

  @Mixin private CommonOptions common;

  private final Console console;
  private final Stages stages;

  public PreviewCommand(Console console, Stages stages) {
    this.console = console;
    this.stages = stages;
  }

  @Override
  public Integer call() {
    if (columns != null && (columns < 8 || columns > 400)) {
      throw new ParameterException(
          spec.commandLine(), "found --columns " + columns + "; wanted 8 to 400");
    }
    List<JobInputs.Source> sources = inputs.sources();
    inputs.check();
    if (!watch) {
      return draw(sources, force);
    }
    if (sources.size() > 1) {
      throw new ParameterException(
          spec.commandLine(), "found --watch with " + sources.size() + " jobs; wanted one");
    }
    // Only a preview is ever replaced, and every save replaces the one before.
    return new PreviewWatch(console, sources.get(0), inputs.files())
        .run(() -> draw(inputs.sources(), true));
  }

  private int draw(List<JobInputs.Source> sources, boolean replace) {
    PlanOptions options = PlanOptions.preview(accept.accepted());
    Stages shown = new TiledStages(withPicture());
    List<JobRun> runs =
        new OutputOptions(directory, replace)
            .runs(spec, shown, sources, options, OutputKind.PREVIEW, false);
    JobTalk talk = new JobTalk(console, shown, common, json);
    return runs.size() == 1
        ? talk.one(runs.get(0))
        : Batch.worst(new Batch(console, talk, 1).run(runs));
  }

  /**
   * The picture goes to terminals unasked, elsewhere only when asked for, so that scripts get the
   * table alone.
   */
  private Stages withPicture() {
    TerminalPreview.Colour able =
        console.outColour()
            ? TerminalPreview.colour(System.getenv("COLORTERM"), System.getenv("TERM"))
            : TerminalPreview.Colour.NONE;
    int widest =
        console.outTerminal() ? Math.min(console.columns(), WIDEST_COLUMNS) : USUAL_COLUMNS;
    int width = columns != null ? columns : widest;
    return switch (picture) {
      case NO -> stages;
      case LETTERS -> new PictureStages(stages, TerminalPreview.Colour.NONE, width);
      case COLOUR ->
          new PictureStages(
              stages,
              able == TerminalPreview.Colour.CUBE ? able : TerminalPreview.Colour.FULL,
              width);
      case AUTO -> console.outTerminal() ? new PictureStages(stages, able, width) : stages;
    };
  }

  /** Stages whose table has the picture in characters above it. */
  private record PictureStages(Stages usual, TerminalPreview.Colour colour, int columns)
      implements StagesDecorator {

    @Override
    public String table(Plan plan) {
      return TerminalPreview.text(plan.landscape(), columns, colour) + "\n" + usual.table(plan);
    }
  }
}
