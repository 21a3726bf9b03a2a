package plyscape.cli.shop;

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
import plyscape.cli.option.PanelSize;
import plyscape.cli.option.Paths;
import plyscape.cli.option.PlaceOption;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.fault.JobFault;
import plyscape.job.LayupReader;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.PanelCorners;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.layup.Spot;
import plyscape.layup.advice.NextMeasurement;
import plyscape.layup.advice.ThinPlyAdvice;
import plyscape.output.OutputFile;
import plyscape.shop.LayupDrawing;

/**
 * {@code plyscape check}: where each ply of a layup lies, whether it can be hit surely, and what
 * would help.
 */
@Command(
    name = "check",
    description =
        "The table of a layup's plies: where each lies, how deep it is cut, whether that is sure,"
            + " and what would help.",
    sortOptions = false)
public final class CheckCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "LAYUP.yaml", description = "The layup.")
  private String layupFile;

  @Mixin private AllowanceOptions allowanceOptions;

  @Option(
      names = "--accept-thickness",
      description = "Believe a measured thickness far from the nominal one.")
  private boolean acceptThickness;

  @Option(
      names = "--strict",
      description = "A ply too thin to hit surely is a fault (exit code 1).")
  private boolean strict;

  @Option(
      names = "--measuring-tolerance",
      paramLabel = "MM",
      defaultValue = "0.02",
      description =
          "Plus or minus of a measurement yet to be made, for the advice; default ${DEFAULT-VALUE}"
              + " (good calipers).")
  private double measuringToleranceMm;

  @Option(
      names = "--at",
      paramLabel = "X,Y",
      description =
          "Judge at that place of the panel, mm from its lower left corner; default its centre.")
  private String place;

  @Option(
      names = "--panel",
      paramLabel = "WxH",
      defaultValue = "240x240",
      description =
          "Size of the panel in mm, for a layup measured by place; default ${DEFAULT-VALUE}.")
  private String panel;

  @Option(names = "--svg", paramLabel = "FILE", description = "Also draw the section to scale.")
  private String svgFile;

  @Option(names = "--force", description = "Replace an earlier drawing.")
  private boolean force;

  @Option(names = "--json", description = "Print everything as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;

  public CheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (!(measuringToleranceMm >= 0 && measuringToleranceMm <= 10)) {
      throw new ParameterException(
          spec.commandLine(),
          "found --measuring-tolerance " + measuringToleranceMm + "; wanted 0 to 10 mm");
    }
    Path svg = svgFile == null ? null : Paths.of(spec, svgFile);
    if (svg != null) {
      OutputFile.require(svg, force);
    }
    CheckReport report = report();
    long thin = report.depths().stream().filter(d -> !report.reliable(d)).count();
    if (svg != null && !(strict && thin > 0)) {
      OutputFile.write(
          svg, LayupDrawing.svg(report.layup(), report.depths(), report.allowance()), force);
    }
    console.result(json ? report.json() : CheckText.of(report, console.outColour()));
    if (strict && thin > 0) {
      throw new JobFault(
          thin + (thin == 1 ? " ply is" : " plies are") + " too thin to hit surely",
          "the advice above says what would help");
    }
    if (svg != null && !common.quiet()) {
      console.talk("wrote " + svg);
    }
    return ExitCodes.DONE;
  }

  private CheckReport report() {
    PanelSize size = PanelSize.of(spec, "--panel", panel);
    Layup layup = LayupReader.read(Paths.of(spec, layupFile)).on(size.widthMm(), size.heightMm());
    PanelPoint at =
        place == null ? layup.measured().centre() : PlaceOption.of(spec, "--at", place, size);
    CutAllowance allowance = allowanceOptions.read(spec);
    Depths depths = DepthModel.depths(layup, allowance, acceptThickness).at(at);
    boolean everywhere = layup.measured().byPlace() && place == null;
    return new CheckReport(
        layup,
        allowance,
        depths,
        at,
        everywhere ? corners(depths, size) : List.of(),
        ThinPlyAdvice.of(layup, allowance, measuringToleranceMm, at),
        NextMeasurement.of(layup, allowance, spots(layup, size), measuringToleranceMm)
            .orElse(null));
  }

  private static List<PanelCorners> corners(Depths depths, PanelSize size) {
    return depths.stream()
        .map(d -> PanelCorners.of(depths, d.ply().number(), size.widthMm(), size.heightMm()))
        .toList();
  }

  /** Every ply all over the panel, as nobody knows yet what shows where. */
  private static List<Spot> spots(Layup layup, PanelSize size) {
    List<Spot> out = new ArrayList<>();
    for (Ply ply : layup.plies().subList(0, Math.max(1, layup.plies().size() - 1))) {
      for (int i = 0; i < 25; i++) {
        double x = (i % 5 + 0.5) / 5 * size.widthMm();
        double y = (i / 5 + 0.5) / 5 * size.heightMm();
        out.add(new Spot(ply.number(), new PanelPoint(x, y), Double.NaN, true));
      }
    }
    return out;
  }
}
