package plyscape.cli.shop;

import java.nio.file.Path;
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
import plyscape.job.LayupReader;
import plyscape.output.OutputFile;
import plyscape.shop.Glue;
import plyscape.shop.Moisture;
import plyscape.shop.Press;
import plyscape.shop.PressingOrder;
import plyscape.shop.PressingPage;
import plyscape.shop.PressingSheet;
import plyscape.shop.PressingText;

/** {@code plyscape glueup}: the pressing sheet of a layup. */
@Command(
    name = "glueup",
    description =
        "The pressing sheet: veneers to cut, balance, glue, pressure, times, movement with"
            + " moisture.",
    sortOptions = false)
public final class GlueupCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "LAYUP.yaml", description = "The layup.")
  private String layupFile;

  @Option(
      names = "--size",
      paramLabel = "WxH",
      required = true,
      description = "Finished panel, mm, such as 260x260.")
  private String size;

  @Option(
      names = "--trim",
      paramLabel = "MM",
      defaultValue = "10",
      description = "Trimmed off each side after pressing; default ${DEFAULT-VALUE}.")
  private double trim;

  @Option(
      names = "--glue",
      paramLabel = "FAMILY",
      defaultValue = "PVA",
      description = "${COMPLETION-CANDIDATES}; default ${DEFAULT-VALUE}.")
  private Glue glue;

  @Option(
      names = "--spread",
      paramLabel = "G/M2",
      description = "Glue on one side of each line; default by family.")
  private Double spread;

  @Option(
      names = "--waste",
      paramLabel = "PERCENT",
      defaultValue = "15",
      description = "Glue that stays in pot and roller; default ${DEFAULT-VALUE}.")
  private double waste;

  @Option(
      names = "--press",
      paramLabel = "HOW",
      defaultValue = "JACKS",
      description = "${COMPLETION-CANDIDATES}; default ${DEFAULT-VALUE}.")
  private Press press;

  @Option(
      names = "--pressure",
      paramLabel = "MPA",
      description = "Clamping pressure; default what the densest wood wants.")
  private Double pressure;

  @Option(
      names = "--force-each",
      paramLabel = "KN",
      description = "Force of one jack or clamp; default 20 for a jack, 3 for a clamp.")
  private Double forceEach;

  @Option(names = "--open-time", paramLabel = "MIN", description = "From the glue's data sheet.")
  private Double openTime;

  @Option(names = "--press-time", paramLabel = "MIN", description = "From the glue's data sheet.")
  private Double pressTime;

  @Option(
      names = "--moisture",
      paramLabel = "PERCENT",
      defaultValue = "7",
      description = "Moisture of the sheets at pressing; default ${DEFAULT-VALUE}.")
  private double moisture;

  @Option(
      names = "--moisture-to",
      paramLabel = "PERCENT",
      description = "Moisture of the panel where it will hang.")
  private Double moistureTo;

  @Option(
      names = "--room",
      paramLabel = "C,RH",
      description =
          "Instead of --moisture-to: the room where it will hang, such as 21,50 (degrees C, percent"
              + " humidity).")
  private String room;

  @Option(
      names = "--quartered",
      description = "The veneer is quarter-cut, so that its thickness runs along the rings.")
  private boolean quartered;

  @Option(
      names = "--svg",
      paramLabel = "FILE",
      description = "Also one page for the wall, A4 or US Letter.")
  private String svgFile;

  @Option(names = "--force", description = "Replace an earlier page.")
  private boolean force;

  @Option(names = "--json", description = "Print the sheet as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;

  public GlueupCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    Path svg = svgFile == null ? null : Paths.of(spec, svgFile);
    PressingOrder order = order();
    if (svg != null) {
      OutputFile.require(svg, force);
    }
    PressingSheet sheet = PressingSheet.of(LayupReader.read(Paths.of(spec, layupFile)), order);
    if (svg != null) {
      OutputFile.write(svg, PressingPage.svg(sheet), force);
    }
    console.result(json ? GlueupJson.text(sheet) : PressingText.text(sheet));
    if (svg != null && !common.quiet()) {
      console.talk("wrote " + svg);
    }
    return ExitCodes.DONE;
  }

  private PressingOrder order() {
    PanelSize panel = PanelSize.of(spec, "--size", size);
    PanelSize.requireRange(spec, "--trim", trim, 0, 200);
    PanelSize.requireRange(spec, "--spread", spread, 1, 2000);
    PanelSize.requireRange(spec, "--waste", waste, 0, 500);
    PanelSize.requireRange(spec, "--pressure", pressure, 0.001, 20);
    PanelSize.requireRange(spec, "--force-each", forceEach, 0.01, 10_000);
    PanelSize.requireRange(spec, "--open-time", openTime, 0.5, 10_000);
    PanelSize.requireRange(spec, "--press-time", pressTime, 0, 100_000);
    PanelSize.requireRange(spec, "--moisture", moisture, 0, 30);
    PanelSize.requireRange(spec, "--moisture-to", moistureTo, 0, 30);
    double each = forceEach != null ? forceEach : press == Press.CLAMPS ? 3 : 20;
    return new PressingOrder(
        panel.widthMm(),
        panel.heightMm(),
        trim,
        glue,
        spread,
        waste / 100,
        press,
        pressure,
        each,
        openTime,
        pressTime,
        moisture,
        target(),
        quartered);
  }

  private Double target() {
    if (room == null) {
      return moistureTo;
    }
    String[] parts = room.split(",", -1);
    if (moistureTo != null || parts.length != 2) {
      throw new picocli.CommandLine.ParameterException(
          spec.commandLine(),
          "--room: found \""
              + room
              + "\"; wanted degrees C and percent humidity, such as 21,50, and no --moisture-to");
    }
    try {
      double celsius = Double.parseDouble(parts[0].strip());
      double humidity = Double.parseDouble(parts[1].strip());
      PanelSize.requireRange(spec, "--room", celsius, 0, 60);
      PanelSize.requireRange(spec, "--room", humidity, 0, 95);
      return Moisture.equilibrium(celsius, humidity / 100);
    } catch (NumberFormatException e) {
      throw new picocli.CommandLine.ParameterException(
          spec.commandLine(),
          "--room: found \"" + room + "\"; wanted degrees C and percent humidity, such as 21,50");
    }
  }
}
