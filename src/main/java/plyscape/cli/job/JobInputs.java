package plyscape.cli.job;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;
import plyscape.batch.JobList;
import plyscape.cli.option.Paths;
import plyscape.cli.option.SetOption;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.job.yaml.Setting;

/**
 * What {@code plan} and {@code preview} work on: job files, or a terrain and a layup; and options
 * over the job's keys.
 */
public final class JobInputs {

  @Spec(Target.MIXEE)
  private CommandSpec spec;

  @Parameters(
      arity = "0..*",
      paramLabel = "JOB.yaml... | TERRAIN LAYUP.yaml",
      hideParamSyntax = true,
      description =
          "One or more job files; or a terrain and a layup, everything else by default and"
              + " options.")
  private List<String> inputs = List.of();

  @Option(
      names = "--list",
      paramLabel = "FILE",
      description = "More job files from a text file, one a line, named from its folder.")
  private String list;

  @Option(
      names = "--each",
      paramLabel = "CSV",
      description =
          "The job once for each row of a table: its columns are keys of the job, and \"name\""
              + " names the output.")
  private String each;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "Set a key of the job, such as tools.2.feed=900. May be repeated.")
  private List<String> set = new ArrayList<>();

  @Option(names = "--layup", paramLabel = "FILE", description = "Another layup.")
  private String layup;

  @Option(names = "--width", paramLabel = "MM", description = "Width of the panel.")
  private String width;

  @Option(names = "--height", paramLabel = "MM", description = "Height of the panel.")
  private String height;

  @Option(names = "--border", paramLabel = "MM", description = "Margin that stays uncut.")
  private String border;

  @Option(
      names = "--plies",
      paramLabel = "NAMES",
      description = "Plies for the terrain, with commas, top to bottom.")
  private String plies;

  @Option(
      names = "--bands",
      paramLabel = "HOW",
      description =
          "scale, equal-interval, equal-area, natural, or falling elevations in m with commas.")
  private String bands;

  @Option(names = "--smoothing", paramLabel = "MM", description = "Gaussian sigma on the panel.")
  private String smoothing;

  @Option(
      names = "--crop",
      paramLabel = "X0,Y0,X1,Y1",
      description = "Part of the terrain, in units of --crop-crs.")
  private String crop;

  @Option(
      names = "--crop-crs",
      paramLabel = "CODE",
      description = "CRS of --crop, such as EPSG:32632.")
  private String cropCrs;

  @Option(
      names = "--top",
      paramLabel = "leave|mid",
      description = "Top ply uncut, or cut to its own middle.")
  private String top;

  @Option(names = "--sanding", paramLabel = "MM", description = "Taken off after the cut.")
  private String sanding;

  @Option(names = "--sanding-tolerance", paramLabel = "MM", description = "Plus or minus.")
  private String sandingTolerance;

  @Option(
      names = "--clearance",
      paramLabel = "MM",
      description = "Least clearance from a glue line.")
  private String clearance;

  @Option(names = "--method", paramLabel = "rss|worst", description = "How tolerances add up.")
  private String method;

  @Option(
      names = "--minimum-area",
      paramLabel = "MM2",
      description = "Smaller regions go to a neighbour.")
  private String minimumArea;

  /** One job to be read. */
  public interface Source {

    /** Its name for people and for directories. */
    String name();

    Job read(Warnings warnings);

    /** Where a key of it stands. */
    Place place(String key);

    /** The same job under another name, with more set over it. */
    Source with(String name, List<Setting> more);
  }

  record FileSource(String name, Path file, List<Setting> settings) implements Source {
    @Override
    public Job read(Warnings warnings) {
      return JobReader.read(file, settings, warnings);
    }

    @Override
    public Place place(String key) {
      return JobReader.place(file, settings, key);
    }

    @Override
    public Source with(String other, List<Setting> more) {
      return new FileSource(other, file, joined(settings, more));
    }
  }

  private record PairSource(String name, Path terrain, Path layup, List<Setting> settings)
      implements Source {
    @Override
    public Job read(Warnings warnings) {
      return JobReader.of(terrain, layup, settings, warnings);
    }

    @Override
    public Place place(String key) {
      return JobReader.place(settings, key).orElse(new Place("", 0, 0, key));
    }

    @Override
    public Source with(String other, List<Setting> more) {
      return new PairSource(other, terrain, layup, joined(settings, more));
    }
  }

  private static List<Setting> joined(List<Setting> settings, List<Setting> more) {
    List<Setting> all = new ArrayList<>(settings);
    all.addAll(more);
    return all;
  }

  /**
   * The jobs that were asked for, at least one, with names that differ.
   *
   * @throws ParameterException if the arguments aren't one of the two forms
   */
  List<Source> sources() {
    List<Source> given = given();
    return each == null ? given : TableJobs.of(spec, given, path(each)).sources();
  }

  private List<Source> given() {
    if (inputs.isEmpty() && list == null) {
      throw new MissingParameterException(
          spec.commandLine(),
          spec.positionalParameters().get(0),
          "Missing required parameter: 'JOB.yaml... | TERRAIN LAYUP.yaml'");
    }
    List<Setting> settings = settings();
    if (inputs.stream().allMatch(JobInputs::isYaml)) {
      List<Path> jobs = new ArrayList<>(inputs.stream().map(this::path).toList());
      jobs.addAll(list == null ? List.of() : JobList.read(path(list)));
      return JobNames.distinct(jobs).entrySet().stream()
          .map(entry -> (Source) new FileSource(entry.getValue(), entry.getKey(), settings))
          .toList();
    }
    if (list == null && inputs.size() == 2 && isYaml(inputs.get(1))) {
      Path terrain = path(inputs.get(0));
      return List.of(
          new PairSource(JobNames.stem(terrain), terrain, path(inputs.get(1)), settings));
    }
    String found = inputs.stream().filter(input -> !isYaml(input)).findFirst().orElseThrow();
    Path inFolder = path(found).resolve("job.yaml");
    if (Files.isRegularFile(inFolder)) {
      throw new ParameterException(
          spec.commandLine(), "found the folder \"" + found + "\"; did you mean " + inFolder + "?");
    }
    throw new ParameterException(
        spec.commandLine(),
        "found \""
            + found
            + "\"; wanted job files that end in .yaml, or a terrain and then a layup that ends in"
            + " .yaml");
  }

  /** Whether a list or a table was given: then it is a batch, however many it names. */
  boolean listed() {
    return list != null || each != null;
  }

  /**
   * Looks at every row of a table before the first is planned.
   *
   * @throws plyscape.fault.InputFault if anything is wrong with it, all faults in one message
   */
  void check() {
    if (each != null) {
      TableJobs.of(spec, given(), path(each)).check();
    }
  }

  /** The files named on the command line. */
  List<Path> files() {
    List<Path> files = new ArrayList<>(inputs.stream().map(this::path).toList());
    if (layup != null) {
      files.add(path(layup));
    }
    return files;
  }

  private static boolean isYaml(String input) {
    String lower = input.toLowerCase(Locale.ROOT);
    return lower.endsWith(".yaml") || lower.endsWith(".yml");
  }

  private Path path(String text) {
    return Paths.of(spec, text);
  }

  /** Options as settings over the job's keys; {@code --set} goes over the others. */
  private List<Setting> settings() {
    List<Setting> out = new ArrayList<>();
    add(out, "layup", "--layup", layup == null ? null : quoted(layup));
    add(out, "panel.width", "--width", width);
    add(out, "panel.height", "--height", height);
    add(out, "panel.border", "--border", border);
    add(out, "terrain.plies", "--plies", plies == null ? null : names(plies));
    add(out, "terrain.bands", "--bands", bands == null ? null : bandsValue(bands));
    add(out, "terrain.smoothing", "--smoothing", smoothing);
    add(out, "terrain.crop", "--crop", crop == null ? null : "[" + crop + "]");
    add(out, "terrain.crop_crs", "--crop-crs", cropCrs == null ? null : quoted(cropCrs));
    add(out, "top", "--top", top == null ? null : quoted(top));
    add(out, "sanding", "--sanding", sanding);
    add(out, "sanding_tolerance", "--sanding-tolerance", sandingTolerance);
    add(out, "clearance.minimum", "--clearance", clearance);
    add(out, "clearance.method", "--method", method == null ? null : quoted(method));
    add(out, "minimum_area", "--minimum-area", minimumArea);
    out.addAll(SetOption.read(spec, set, "terrain.smoothing=0.6"));
    return out;
  }

  private static void add(List<Setting> out, String key, String option, String value) {
    if (value != null) {
      out.add(new Setting(key, value, option));
    }
  }

  private static String names(String list) {
    return Stream.of(list.split(",", -1))
        .map(name -> quoted(name.strip()))
        .collect(Collectors.joining(", ", "[", "]"));
  }

  /** Numbers make a list, anything else is a method's name. */
  private static String bandsValue(String text) {
    boolean numbers = text.matches("[-+0-9.,eE\\s]+");
    return numbers ? "[" + text + "]" : quoted(text);
  }

  /** As a YAML scalar in single quotes, in which only the quote itself needs care. */
  private static String quoted(String text) {
    return "'" + text.replace("'", "''") + "'";
  }
}
