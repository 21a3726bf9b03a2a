package plyscape.cli.shop;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.files.InputFile;
import plyscape.gcode.ProgramFrame;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.layup.DepthModel;
import plyscape.layup.PanelPoint;
import plyscape.machine.Tool;
import plyscape.output.OutputDirectory;
import plyscape.output.OutputFile;
import plyscape.output.OutputKind;
import plyscape.shop.ProbeFiles;
import plyscape.shop.ProbeLog;
import plyscape.shop.ProbePlaces;
import plyscape.shop.ProbeProgram;
import plyscape.shop.ProbeSheet;
import plyscape.terrain.TerrainReader;
import plyscape.text.Template;

/** {@code plyscape probe}: sheets for measuring a panel as it lies, and what was probed read in. */
@Command(
    name = "probe",
    description =
        "Sheets and empty files to measure how the panel lies and where its plies end, or a log of"
            + " probing read into such a file.",
    sortOptions = false)
public final class ProbeCommand implements Callable<Integer> {

  private static final OutputKind KIND =
      OutputKind.of(
          "probe.html",
          "Heights of the top face",
          "(probe|edges)\\.html",
          "(top|edges)\\.csv",
          "probe\\.nc");

  private static final long MOST_BYTES = 8_000_000;
  private static final Pattern GRID = Pattern.compile("(\\d{1,2})\\s*[xX\u00d7]\\s*(\\d{1,2})");

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "JOB.yaml",
      description = "The job; with --read only for where its zero is.")
  private String jobFile;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR|FILE",
      required = true,
      description = "Where the sheets go; with --read the file of readings, such as top.csv.")
  private String output;

  @Option(
      names = "--places",
      paramLabel = "CxR",
      defaultValue = "5x5",
      description = "Columns and rows of places over the carved area; default ${DEFAULT-VALUE}.")
  private String places;

  @Option(
      names = "--program",
      description = "Also probe.nc, which touches all places; needs a wired touch probe.")
  private boolean program;

  @Option(
      names = "--read",
      paramLabel = "LOG",
      description = "Read probed places out of any text with X Y Z in a line, work coordinates.")
  private String log;

  @Option(names = "--force", description = "Replace earlier output.")
  private boolean force;

  @Mixin private CommonOptions common;

  private final Console console;

  public ProbeCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (log != null) {
      return read();
    }
    if (jobFile == null) {
      throw new ParameterException(
          spec.commandLine(), "wanted a job file, or --read with a log of probing");
    }
    Warnings warnings = new Warnings();
    Job job = job(warnings);
    ProbePlaces grid = grid(carved(job, warnings));
    List<PanelPoint> edges = ProbeFiles.edgePlaces(job.panel().widthMm(), job.panel().heightMm());
    write(job, grid, edges);
    console.result(
        Template.fill(
            "%d places to touch (%d x %d), %d on the edges. Print probe.html and edges.html,"
                + " fill in top.csv and edges.csv.\n",
            grid.places().size(), grid.columns(), grid.rows(), edges.size()));
    if (!common.quiet()) {
      console.talk("wrote " + output);
    }
    return ExitCodes.DONE;
  }

  private void write(Job job, ProbePlaces grid, List<PanelPoint> edges) {
    Box panel = new Box(0, 0, job.panel().widthMm(), job.panel().heightMm());
    try (OutputDirectory out = OutputDirectory.open(Paths.of(spec, output), KIND, force)) {
      out.write("probe.html", ProbeSheet.heights(job.name(), panel, zero(job), grid, program));
      out.write("top.csv", ProbeFiles.top(grid));
      out.write("edges.html", ProbeSheet.edges(job.layup(), panel, edges));
      out.write("edges.csv", ProbeFiles.edges(job.layup(), edges));
      if (program) {
        out.write(
            "probe.nc",
            ProbeProgram.text(job.name(), frame(job), job.machine().safeHeightMm(), grid.places()));
      }
      out.publish();
    }
  }

  private Integer read() {
    Path target = Paths.of(spec, output);
    OutputFile.require(target, force);
    Path source = Paths.of(spec, log);
    String text =
        InputFile.text(source, MOST_BYTES, "give a log of probing", "wanted a log of probing");
    ProgramFrame frame = jobFile == null ? new ProgramFrame(0, 0, 0) : frame(job(new Warnings()));
    ProbeLog found = ProbeLog.of(text, frame);
    if (found.points().isEmpty()) {
      throw new InputFault(
          Place.file(source.toString()),
          "no line with three numbers for X Y Z",
          "wanted lines such as X10 Y20 Z-0.12 or 10,20,-0.12, in work coordinates");
    }
    OutputFile.write(target, found.csv(), force);
    console.result(
        found.points().size()
            + " places, from lines "
            + LineList.of(found.taken())
            + ".\n"
            + (found.passed().isEmpty()
                ? ""
                : "Not taken: lines " + LineList.of(found.passed()) + ".\n"));
    if (!common.quiet()) {
      console.talk("wrote " + target);
    }
    return ExitCodes.DONE;
  }

  private Job job(Warnings warnings) {
    return JobReader.read(Paths.of(spec, jobFile), List.of(), warnings);
  }

  /** The carved area, or for several panels all of one. */
  private static Box carved(Job job, Warnings warnings) {
    if (job.panel().tiled()) {
      return new Box(0, 0, job.panel().widthMm(), job.panel().heightMm());
    }
    double smallest = job.tools().stream().mapToDouble(Tool::diameterMm).min().orElse(1);
    return TerrainReader.read(job.terrain(), job.panel(), smallest, warnings).frame().panel();
  }

  private static ProgramFrame frame(Job job) {
    return ProgramFrame.of(
        job.machine(),
        job.panel().widthMm(),
        job.panel().heightMm(),
        DepthModel.thicknessMm(job.layup()));
  }

  private static String zero(Job job) {
    return job.machine().zero().name().toLowerCase(Locale.ROOT).replace('_', ' ')
        + (job.machine().zero().name().equals("CENTRE") ? " of the panel" : " corner");
  }

  private ProbePlaces grid(Box carved) {
    Matcher m = GRID.matcher(places.strip());
    int columns = m.matches() ? Integer.parseInt(m.group(1)) : 0;
    int rows = columns == 0 ? 0 : Integer.parseInt(m.group(2));
    if (columns < 2 || rows < 2 || columns > 30 || rows > 30) {
      throw new ParameterException(
          spec.commandLine(),
          "--places: found \"" + places + "\"; wanted columns x rows, 2x2 to 30x30, such as 7x5");
    }
    return ProbePlaces.over(carved, columns, rows);
  }
}
