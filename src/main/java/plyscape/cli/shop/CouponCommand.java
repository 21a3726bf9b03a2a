package plyscape.cli.shop;

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
import plyscape.cli.option.SetOption;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.process.VersionText;
import plyscape.cli.talk.Console;
import plyscape.fault.Warnings;
import plyscape.job.Bench;
import plyscape.job.LayupReader;
import plyscape.job.yaml.Setting;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.machine.Tool;
import plyscape.output.OutputDirectory;
import plyscape.output.OutputKind;
import plyscape.shop.Coupon;
import plyscape.shop.CouponGauge;
import plyscape.shop.CouponPlaces;
import plyscape.shop.CouponProgram;
import plyscape.simulate.Verification;
import plyscape.text.NearestName;

/**
 * {@code plyscape coupon}: a stepped test cut into an offcut of the panel, with its gauge and the
 * file for the readings.
 */
@Command(
    name = "coupon",
    description =
        "A stepped test cut into an offcut of the panel, which shows where each ply really is:"
            + " G-code, gauge, readings file.",
    sortOptions = false)
public final class CouponCommand implements Callable<Integer> {

  private static final OutputKind KIND =
      OutputKind.of(
          "coupon.json",
          "plyscape-coupon-1",
          "coupon\\.(json|nc)",
          "gauge\\.svg",
          "readings\\.csv");

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "LAYUP.yaml", description = "The layup.")
  private String layupFile;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      required = true,
      description = "Output directory, new or empty.")
  private String directory;

  @Option(names = "--force", description = "Replace an earlier coupon there.")
  private boolean force;

  @Option(
      names = "--size",
      paramLabel = "WxH",
      defaultValue = "120x80",
      description = "The offcut, mm; default ${DEFAULT-VALUE}.")
  private String size;

  @Option(
      names = "--place",
      paramLabel = "X,Y",
      description =
          "Cut it in the waste around the panel instead, its middle at that place, mm from the"
              + " panel's lower left corner; may be repeated.")
  private List<String> at = new ArrayList<>();

  @Option(
      names = "--panel",
      paramLabel = "WxH",
      defaultValue = "240x240",
      description = "Size of the panel in mm, for --place; default ${DEFAULT-VALUE}.")
  private String panelSize;

  @Option(
      names = "--step",
      paramLabel = "MM",
      description =
          "Height of a step; default the finest that fits, at most a fifth of the thinnest ply.")
  private Double step;

  @Option(
      names = "--floor",
      paramLabel = "MM",
      defaultValue = "0.4",
      description = "Wood that stays under the deepest pad; default ${DEFAULT-VALUE}.")
  private double floor;

  @Option(
      names = "--tool",
      paramLabel = "NAME",
      description = "Which of the job's tools; default the first flat one.")
  private String toolName;

  @Option(names = "--diameter", paramLabel = "MM", description = "Another diameter for it.")
  private String diameter;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "Set a machine's or tool's key: tools.1.feed=900. May be repeated.")
  private List<String> set = new ArrayList<>();

  @Mixin private AllowanceOptions allowanceOptions;

  @Option(
      names = "--accept-thickness",
      description = "Believe a measured thickness far from the nominal one.")
  private boolean acceptThickness;

  @Option(names = "--json", description = "Print coupon.json instead of a summary.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;

  public CouponCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    PanelSize panel = PanelSize.of(spec, "--size", size);
    PanelSize whole = PanelSize.of(spec, "--panel", panelSize);
    List<PanelPoint> centres =
        at.stream().map(text -> PlaceOption.of(spec, "--place", text, whole)).toList();
    PanelSize.requireRange(spec, "--step", step, 0.001, 50);
    PanelSize.requireRange(spec, "--floor", floor, 0, 100);
    Bench bench = allowanceOptions.bench(spec, settings());
    Tool tool = tool(bench);
    Warnings warnings = new Warnings();
    try (OutputDirectory out = OutputDirectory.open(Paths.of(spec, directory), KIND, force)) {
      Layup layup = LayupReader.read(Paths.of(spec, layupFile));
      Depths depths = DepthModel.depths(layup, bench.allowance(), acceptThickness);
      Coupon.Wish wish = new Coupon.Wish(panel.widthMm(), panel.heightMm(), step, floor);
      Coupon coupon = Coupon.of(depths, wish, tool, bench.machine(), warnings);
      CouponPlaces places =
          centres.isEmpty()
              ? CouponPlaces.offcut(coupon)
              : new CouponPlaces(whole.widthMm(), whole.heightMm(), coupon, centres);
      CouponProgram program = program(places, layup, tool, bench, warnings);
      Verification proof =
          CouponProof.of(places, program, DepthModel.thicknessMm(layup), tool, bench.machine());
      String text = CouponText.json(layup, depths, coupon, tool, program, proof);
      out.write("coupon.json", text);
      out.write(CouponProgram.FILE, program.text());
      out.write("gauge.svg", CouponGauge.svg(coupon, layup, depths));
      out.write("readings.csv", CouponGauge.readingsCsv(coupon, depths, centres));
      out.publish();
      console.result(json ? text : CouponText.summary(coupon, tool, program));
    }
    common.close(
        console, warnings, "coupon.json, coupon.nc, gauge.svg, readings.csv to " + directory);
    return ExitCodes.DONE;
  }

  private static CouponProgram program(
      CouponPlaces places, Layup layup, Tool tool, Bench bench, Warnings warnings) {
    return CouponProgram.of(places, layup, tool, bench.machine(), VersionText.text(), warnings);
  }

  private List<Setting> settings() {
    List<Setting> settings = new ArrayList<>();
    if (diameter != null) {
      settings.add(
          new Setting(
              "tools." + (toolName == null ? "1" : toolName) + ".diameter",
              diameter,
              "--diameter"));
    }
    settings.addAll(SetOption.read(spec, set, "tools.1.feed=900"));
    return settings;
  }

  private Tool tool(Bench bench) {
    if (toolName == null) {
      return bench.tools().stream()
          .filter(t -> t.shape() == Tool.Shape.FLAT)
          .findFirst()
          .orElse(bench.tools().get(0));
    }
    return bench.tools().stream()
        .filter(t -> t.name().equals(toolName))
        .findFirst()
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(),
                    "--tool: no tool \""
                        + toolName
                        + "\"; "
                        + NearestName.hint(
                            toolName, bench.tools().stream().map(Tool::name).toList())));
  }
}
