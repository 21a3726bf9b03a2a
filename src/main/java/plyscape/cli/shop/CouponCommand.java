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
import plyscape.cli.talk.WarningLines;
import plyscape.fault.VerifyFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
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
import plyscape.simulate.Cut;
import plyscape.simulate.Setup;
import plyscape.simulate.Simulator;
import plyscape.simulate.Target;
import plyscape.simulate.Verification;
import plyscape.text.NearestName;
import plyscape.text.Template;

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

  /** Cell of the simulation; pads are several mm wide. */
  private static final double CELL_MM = 0.1;

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
      Coupon coupon =
          Coupon.of(
              depths,
              new Coupon.Wish(panel.widthMm(), panel.heightMm(), step, floor),
              tool,
              bench.machine(),
              warnings);
      double thickness = DepthModel.thicknessMm(layup);
      CouponPlaces places =
          centres.isEmpty()
              ? CouponPlaces.offcut(coupon)
              : new CouponPlaces(whole.widthMm(), whole.heightMm(), coupon, centres);
      CouponProgram program =
          CouponProgram.of(
              places,
              "coupon of " + layup.name(),
              thickness,
              tool,
              bench.machine(),
              VersionText.text(),
              warnings);
      Verification verification = proof(places, program, thickness, tool, bench);
      String text = CouponText.json(layup, depths, coupon, tool, program, verification);
      out.write("coupon.json", text);
      out.write(CouponProgram.FILE, program.text());
      out.write("gauge.svg", CouponGauge.svg(coupon, layup, depths));
      out.write("readings.csv", CouponGauge.readingsCsv(coupon, depths, centres));
      out.publish();
      console.result(json ? text : CouponText.summary(coupon, tool, program));
    }
    if (!common.quiet()) {
      WarningLines.of(warnings.list(), common.verbose()).forEach(console::talk);
      console.talk("wrote coupon.json, coupon.nc, gauge.svg, readings.csv to " + directory);
    }
    return ExitCodes.DONE;
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

  /** Cuts the text in simulation, as plan does. */
  private static Verification proof(
      CouponPlaces places, CouponProgram program, double thickness, Tool tool, Bench bench) {
    List<Target> targets = new ArrayList<>();
    for (Coupon.Pad pad : places.coupon().pads()) {
      double[][] rings =
          places.shifts().stream().map(by -> ring(pad.box(), by)).toArray(double[][]::new);
      targets.add(new Target(pad.number(), pad.depthMm(), rings));
    }
    Setup setup = new Setup(places.wood(), thickness, places.carved(), bench.machine(), CELL_MM);
    Verification v =
        Simulator.run(setup, List.of(new Cut(program.parsed(), tool)), targets, List.of(tool))
            .verification();
    if (!v.safe()) {
      String first =
          v.gougedMm2() > 0
              ? "it gouges"
              : v.collisions().isEmpty() ? "it bites too deep" : collision(v.collisions());
      throw new VerifyFault(
          "the coupon's G-code failed its simulation and was not written: " + first,
          "check the machine's travel and the tool; if those are right, please report it with the"
              + " layup");
    }
    return v;
  }

  private static double[] ring(Box b, double[] by) {
    double west = b.minX() + by[0];
    double east = b.maxX() + by[0];
    double south = b.minY() + by[1];
    double north = b.maxY() + by[1];
    return new double[] {west, south, east, south, east, north, west, north};
  }

  private static String collision(List<Verification.Collision> collisions) {
    Verification.Collision c = collisions.get(0);
    return Template.fill(
        "%s collisions, the first in line %s at X%.2f Y%.2f: %s",
        collisions.size(), c.line(), c.x(), c.y(), c.what());
  }
}
