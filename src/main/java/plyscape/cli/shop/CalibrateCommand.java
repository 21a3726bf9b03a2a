package plyscape.cli.shop;

import java.io.IOException;
import java.nio.file.Files;
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
import plyscape.cli.option.PanelSize;
import plyscape.cli.option.Paths;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.files.InputFile;
import plyscape.job.LayupReader;
import plyscape.layup.Layup;
import plyscape.layup.calibration.Calibration;
import plyscape.layup.calibration.CalibrationRules;
import plyscape.layup.calibration.Reading;
import plyscape.output.OutputFile;
import plyscape.shop.CalibratedLayup;
import plyscape.shop.ReadingsFile;
import plyscape.text.Template;

/** {@code plyscape calibrate}: readings to measured bottoms, in a new layup file. */
@Command(
    name = "calibrate",
    description =
        "Measured ply bottoms from readings off a coupon or the panel's edge, written into a new"
            + " layup file.",
    sortOptions = false)
public final class CalibrateCommand implements Callable<Integer> {

  /** A file of readings is small; a larger one is something else. */
  private static final long MOST_BYTES = 8_000_000;

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "LAYUP.yaml", description = "The layup as it was.")
  private String layupFile;

  @Parameters(
      index = "1",
      paramLabel = "READINGS.csv",
      description =
          "Rows ply,depth with edge and tolerance where wanted, or ply,from,to; mm below the top"
              + " face.")
  private String readingsFile;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "NEW.yaml",
      required = true,
      description = "The new layup; never the old one.")
  private String output;

  @Option(
      names = "--reading-tolerance",
      paramLabel = "MM",
      description =
          "Plus or minus (3 sigma) of readings that state none; default: estimated from their"
              + " scatter, or 0.1 if there are too few.")
  private Double readingTolerance;

  @Option(
      names = "--z-error",
      paramLabel = "MM",
      defaultValue = "0.03",
      description =
          "Plus or minus of the zero and Z that all readings off one test cut share; default"
              + " ${DEFAULT-VALUE}.")
  private double zError;

  @Option(
      names = "--coupon-flatness",
      paramLabel = "MM",
      defaultValue = "0.02",
      description =
          "Plus or minus, how flat the wood lay under a test cut; default ${DEFAULT-VALUE}.")
  private double couponFlatness;

  @Option(
      names = "--panel",
      paramLabel = "WxH",
      defaultValue = "240x240",
      description =
          "Size of the panel in mm, for readings with columns x and y; default ${DEFAULT-VALUE}.")
  private String panel;

  @Option(names = "--force", description = "Replace an earlier new layup.")
  private boolean force;

  @Option(names = "--json", description = "Print the outcome as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;

  public CalibrateCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Path source = Paths.of(spec, layupFile);
    Path target = Paths.of(spec, output);
    PanelSize.requireRange(spec, "--reading-tolerance", readingTolerance, 0.0001, 10);
    PanelSize.requireRange(spec, "--z-error", zError, 0, 10);
    PanelSize.requireRange(spec, "--coupon-flatness", couponFlatness, 0, 10);
    requireNotInPlace(source, target);
    OutputFile.require(target, force);
    Layup layup = LayupReader.read(source);
    Path csv = Paths.of(spec, readingsFile);
    List<Reading> readings = ReadingsFile.parse(csv.toString(), text(csv), layup);
    PanelSize size = PanelSize.of(spec, "--panel", panel);
    ReadingsFile.requireOn(csv.toString(), readings, size.widthMm(), size.heightMm());
    layup = layup.on(size.widthMm(), size.heightMm());
    Calibration found =
        Calibration.of(
            layup,
            readings,
            new CalibrationRules(
                readingTolerance == null ? 0.1 : readingTolerance,
                readingTolerance != null,
                Math.hypot(zError, couponFlatness)));
    Warnings warnings = new Warnings();
    warn(csv.toString(), layup, found, warnings);
    OutputFile.write(target, CalibratedLayup.text(text(source), found), force);
    console.result(
        json ? CalibrateText.json(layup, found, warnings) : CalibrateText.table(layup, found));
    common.close(console, warnings, target.toString());
    return ExitCodes.DONE;
  }

  private static void requireNotInPlace(Path source, Path target) {
    try {
      if (Files.exists(target) && Files.exists(source) && Files.isSameFile(source, target)) {
        throw new JobFault(
            target + " is the old layup, and that is never changed in place", "choose another -o");
      }
    } catch (IOException e) {
      throw new JobFault(
          "can't compare " + source + " and " + target + ": " + e.getMessage(),
          "choose another -o");
    }
  }

  private static String text(Path file) {
    return InputFile.text(
        file, MOST_BYTES, "give a file of readings", "a file of readings is a few kB");
  }

  private static void warn(String file, Layup layup, Calibration found, Warnings warnings) {
    for (Calibration.SetAside o : found.outliers()) {
      warnings.add("outlier", outlier(layup, o), file);
    }
    if (found.noise().factor() > 1) {
      warnings.add(
          "scatter",
          Template.fill(
              "readings scatter %.1f times more than their tolerances say; the uncertainty is"
                  + " widened accordingly",
              found.noise().factor()),
          "");
    }
    double coarsest =
        found.boundaries().stream().mapToDouble(Calibration.Boundary::toleranceMm).max().orElse(0);
    double own = CalibratedLayup.worstTolerance(layup);
    if (coarsest > own) {
      warnings.add(
          "coarse-readings",
          Template.fill(
              "bottoms are now known to +-%.3f mm, which is no better than the layup's own"
                  + " tolerances (up to +-%.3f); more readings or a coupon with finer steps would"
                  + " help",
              coarsest, own),
          file);
    }
    if (found.boundaries().stream().allMatch(b -> b.at() == null)) {
      warnings.add(
          "no-place",
          "nothing says where on the panel these readings are from: they hold there, and a panel"
              + " pressed thinner to one side may be off elsewhere; give columns x and y",
          file);
    }
  }

  private static String outlier(Layup layup, Calibration.SetAside o) {
    return Template.fill(
        "row %s (%s, %.3f mm) is %.3f mm too %s against the others and was left out",
        o.reading().row(),
        edge(layup, o.reading()),
        o.reading().depthMm(),
        Math.abs(o.offMm()),
        o.offMm() > 0 ? "deep" : "high");
  }

  private static String edge(Layup layup, Reading r) {
    return (r.top() ? "top of " : "bottom of ") + layup.plies().get(r.plyNumber() - 1).name();
  }
}
