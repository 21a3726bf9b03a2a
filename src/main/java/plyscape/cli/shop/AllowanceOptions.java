package plyscape.cli.shop;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import plyscape.cli.option.Paths;
import plyscape.job.Bench;
import plyscape.job.JobReader;
import plyscape.job.yaml.Setting;
import plyscape.layup.CutAllowance;

/**
 * What cut and finish add to a layup's own errors, where there is no job: its defaults, or a job's
 * keys, or options.
 */
final class AllowanceOptions {

  @Option(
      names = "--job",
      paramLabel = "JOB.yaml",
      description = "Take clearance, sanding, top and the machine's Z error from a job.")
  private String job;

  @Option(
      names = "--clearance",
      paramLabel = "MM",
      description = "Least clearance from a glue line; default 0.10.")
  private String clearance;

  @Option(
      names = "--method",
      paramLabel = "rss|worst",
      description = "How tolerances add up; default rss.")
  private String method;

  @Option(
      names = "--z-error",
      paramLabel = "MM",
      description = "Plus or minus, of the machine's Z; default 0.03.")
  private String zError;

  @Option(
      names = "--sanding",
      paramLabel = "MM",
      description = "Taken off after the cut; default 0.10.")
  private String sanding;

  @Option(
      names = "--sanding-tolerance",
      paramLabel = "MM",
      description = "Plus or minus; default 0.05.")
  private String sandingTolerance;

  @Option(
      names = "--top",
      paramLabel = "leave|mid",
      description = "Top ply uncut, or cut to its own middle; default leave.")
  private String top;

  @Option(
      names = "--minimum-floor",
      paramLabel = "MM",
      description = "Least wood under the deepest cut; default 1.0.")
  private String minimumFloor;

  CutAllowance read(CommandSpec spec) {
    return bench(spec, List.of()).allowance();
  }

  /** The same with tools and machine; more settings go over these. */
  Bench bench(CommandSpec spec, List<Setting> more) {
    List<Setting> settings = settings();
    settings.addAll(more);
    return JobReader.bench(job == null ? null : Paths.of(spec, job), settings);
  }

  /** The options as settings over a job's keys. */
  List<Setting> settings() {
    List<Setting> settings = new ArrayList<>();
    add(settings, "clearance.minimum", "--clearance", clearance);
    add(settings, "clearance.method", "--method", method);
    add(settings, "machine.z_error", "--z-error", zError);
    add(settings, "sanding", "--sanding", sanding);
    add(settings, "sanding_tolerance", "--sanding-tolerance", sandingTolerance);
    add(settings, "top", "--top", top);
    add(settings, "minimum_floor", "--minimum-floor", minimumFloor);
    return settings;
  }

  private static void add(List<Setting> settings, String key, String option, String value) {
    if (value != null) {
      settings.add(new Setting(key, value, option));
    }
  }
}
