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
import plyscape.bands.CarvedCells;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.option.Paths;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.cli.talk.WarningLines;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.job.Ground;
import plyscape.job.JobReader;
import plyscape.job.ShelfReader;
import plyscape.job.yaml.Setting;
import plyscape.layup.CutAllowance;
import plyscape.layup.Shelf;
import plyscape.layup.Veneer;
import plyscape.machine.Tool;
import plyscape.output.OutputFile;
import plyscape.shop.HeightShares;
import plyscape.shop.LayupSearch;
import plyscape.shop.LayupYaml;
import plyscape.shop.Proposal;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;
import plyscape.text.NearestName;
import plyscape.text.Numbers;

/** {@code plyscape suggest}: layups from the sheets on the shelf, for a terrain. */
@Command(
    name = "suggest",
    description =
        "Layups from the sheets on the shelf: odd, balanced, reliable, and suited to the terrain's"
            + " heights.",
    sortOptions = false)
public final class SuggestCommand implements Callable<Integer> {

  /** Plies beyond this are no relief panel. */
  private static final int MOST_PLIES = 99;

  private static final String GUESSES =
      " Glue lines and flatness are guesses unless the sheets' file gave them: measure a pressed"
          + " offcut.";

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "TERRAIN", description = "Elevation raster.")
  private String terrainFile;

  @Option(
      names = "--veneers",
      paramLabel = "VENEERS.yaml",
      required = true,
      description =
          "The shelf: veneers with name, colour, thickness, tolerance, wood, count, high ground"
              + " first; plies, glue_line, zones.")
  private String veneersFile;

  @Option(
      names = "--plies",
      paramLabel = "N",
      description = "How many plies, an odd number; default the file's.")
  private Integer plies;

  @Option(
      names = "--zone",
      paramLabel = "NAME=VENEER",
      description = "A zone that wants a veneer. May be repeated.")
  private List<String> zones = new ArrayList<>();

  @Option(
      names = "--in-order",
      description =
          "Only layups in which the colours that show lie in the order of the file, top to bottom,"
              + " zones' too.")
  private boolean inOrder;

  @Option(
      names = "--count",
      paramLabel = "N",
      defaultValue = "3",
      description = "How many layups to propose; default ${DEFAULT-VALUE}.")
  private int count;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description =
          "Set a key of the terrain or the panel, such as terrain.crop=[0,0,900,900] or"
              + " panel.width=200. May be repeated.")
  private List<String> set = new ArrayList<>();

  @Mixin private AllowanceOptions allowanceOptions;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "LAYUP.yaml",
      description = "Write the best one as a layup file.")
  private String output;

  @Option(names = "--force", description = "Replace an earlier layup file.")
  private boolean force;

  @Option(names = "--json", description = "Print the proposals as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;

  public SuggestCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    if (count < 1 || count > 100) {
      throw new ParameterException(
          spec.commandLine(), "found --count " + count + "; wanted 1 to 100");
    }
    Path target = output == null ? null : Paths.of(spec, output);
    if (target != null) {
      OutputFile.require(target, force);
    }
    Warnings warnings = new Warnings();
    Shelf shelf = withZones(ShelfReader.read(Paths.of(spec, veneersFile)));
    int wanted = plyCount(shelf);
    Ground ground = JobReader.ground(Paths.of(spec, terrainFile), settings(), warnings);
    CutAllowance allowance = ground.bench().allowance();
    LayupSearch.Outcome outcome =
        LayupSearch.of(shelf, wanted, allowance, heights(ground, warnings), count, inOrder);
    if (outcome.proposals().isEmpty()) {
      throw new NoLayup(shelf, wanted, allowance, outcome).fault(inOrder);
    }
    if (target != null) {
      OutputFile.write(target, layupFile(outcome.proposals().get(0)), force);
    }
    console.result(json ? SuggestText.json(wanted, outcome) : SuggestText.text(outcome, allowance));
    if (!common.quiet()) {
      WarningLines.of(warnings.list(), common.verbose()).forEach(console::talk);
      if (target != null) {
        console.talk("wrote " + target);
      }
    }
    return ExitCodes.DONE;
  }

  private static HeightShares heights(Ground ground, Warnings warnings) {
    double smallest =
        ground.bench().tools().stream().mapToDouble(Tool::diameterMm).min().orElseThrow();
    Terrain terrain =
        TerrainReader.read(ground.terrain(), ground.panel().whole(), smallest, warnings);
    if (!(terrain.zmaxM() > terrain.zminM())) {
      throw new JobFault(
          "the terrain is flat, so that its heights prefer no layup", "check the file or the crop");
    }
    return new HeightShares(CarvedCells.of(terrain, Double.NEGATIVE_INFINITY));
  }

  private static String layupFile(Proposal best) {
    return LayupYaml.text(
        best.layup(), "Proposed by plyscape suggest. " + SuggestText.uses(best) + GUESSES);
  }

  private List<Setting> settings() {
    List<Setting> settings = allowanceOptions.settings();
    for (String assignment : set) {
      int equals = assignment.indexOf('=');
      if (equals < 1) {
        throw new ParameterException(
            spec.commandLine(),
            "found --set \"" + assignment + "\"; wanted KEY=VALUE, such as panel.width=200");
      }
      String key = assignment.substring(0, equals);
      settings.add(new Setting(key, assignment.substring(equals + 1), "--set " + key));
    }
    return settings;
  }

  private Shelf withZones(Shelf shelf) {
    List<Shelf.Wish> wishes = new ArrayList<>(shelf.wishes());
    List<String> names = shelf.veneers().stream().map(Veneer::name).toList();
    for (String zone : zones) {
      int equals = zone.indexOf('=');
      String veneer = zone.substring(equals + 1).strip();
      if (equals < 1) {
        throw new ParameterException(
            spec.commandLine(), "found --zone \"" + zone + "\"; wanted NAME=VENEER");
      }
      if (!names.contains(veneer)) {
        throw new ParameterException(
            spec.commandLine(),
            "--zone: no veneer \"" + veneer + "\"; " + NearestName.hint(veneer, names));
      }
      String name = zone.substring(0, equals).strip();
      wishes.removeIf(w -> w.zone().equals(name));
      wishes.add(new Shelf.Wish(name, veneer));
    }
    return new Shelf(
        shelf.name(),
        shelf.plies(),
        shelf.glueLine(),
        shelf.flatnessMm(),
        shelf.veneers(),
        List.copyOf(wishes));
  }

  private int plyCount(Shelf shelf) {
    Integer wanted = plies == null ? shelf.plies() : plies;
    if (wanted == null) {
      throw new ParameterException(
          spec.commandLine(), "how many plies? give --plies N, or \"plies:\" in " + veneersFile);
    }
    if (wanted < 1 || wanted > MOST_PLIES) {
      throw new ParameterException(
          spec.commandLine(), "found --plies " + wanted + "; wanted 3 to " + MOST_PLIES);
    }
    if (wanted < 3 || wanted % 2 == 0) {
      throw new JobFault(
          wanted + " plies can't be balanced about a centre ply",
          "an odd number would do: " + Math.max(3, wanted - 1) + " or " + Math.max(5, wanted + 1));
    }
    int sheets = 0;
    for (Veneer v : shelf.veneers()) {
      sheets += v.count();
      if (v.count() == 0 && shelf.wishes().stream().anyMatch(w -> w.veneer().equals(v.name()))) {
        throw new JobFault(
            "a zone wants \"" + v.name() + "\", of which no sheet is left",
            "buy one or choose another");
      }
    }
    if (sheets < wanted) {
      throw new JobFault(
          wanted + " plies need as many sheets, and " + sheets + " are on the shelf",
          Numbers.fixed(wanted - (double) sheets, 0) + " more would do, or fewer plies");
    }
    return wanted;
  }
}
