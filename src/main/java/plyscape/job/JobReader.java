package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.files.PlanFiles;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.Setting;
import plyscape.job.yaml.SettingTree;
import plyscape.job.yaml.YamlNode;
import plyscape.job.yaml.YamlText;
import plyscape.layup.CutAllowance;
import plyscape.layup.Layup;
import plyscape.layup.MeasuredPlace;
import plyscape.layup.Method;
import plyscape.layup.Sanding;
import plyscape.layup.Top;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.text.Template;

/**
 * Reads {@code job.yaml} and the layup that it names (src/contract.md, section 5), with settings
 * from the command line over it. Defaults are the values shown in src/contract.md.
 */
public final class JobReader {

  private static final String[] KEYS = {
    "name",
    "layup",
    "terrain",
    "panel",
    "zones",
    "tools",
    "machine",
    "clearance",
    "sanding",
    "sanding_tolerance",
    "sanding_block",
    "top",
    "minimum_floor",
    "minimum_area",
    "surface",
    "cusp",
    "standing",
    "lettering",
    "scale_bar",
    "north",
    "pins",
    "outline"
  };

  private static final Range SMALL = Range.mm(0, 10);
  private static final Range BLOCK = Range.mm(0, 500);
  private static final Range FLOOR = Range.mm(0, 100);
  private static final Range AREA = Range.of(0, 100_000, "mm2");

  private JobReader() {}

  /**
   * Reads a job file.
   *
   * @throws InputFault if anything isn't as src/contract.md says
   */
  public static Job read(Path jobFile, List<Setting> settings, Warnings warnings) {
    return job(jobFile, YamlText.read(jobFile), settings, warnings);
  }

  static Job job(Path jobFile, YamlNode tree, List<Setting> settings, Warnings warnings) {
    YamlNode root = YamlText.mappingOf(tree, "\"layup:\" and \"terrain:\" with \"file:\" under it");
    if (root.entries().containsKey("plies") && !root.entries().containsKey("terrain")) {
      throw new InputFault(
          Place.file(jobFile.toString()),
          "a layup, not a job",
          "give a terrain before it, or a job file that names both");
    }
    SettingTree.apply(root, settings);
    JobOrigin origin = JobOrigin.beside(jobFile, settings).alsoReadFrom(jobFile);
    return job(LayupReader.stem(jobFile), root, origin, warnings);
  }

  /**
   * Where a key of a job stands, for faults that are found only after the job was read.
   *
   * @param key such as {@code terrain.crs}
   * @return the key alone when it isn't there
   */
  public static Place place(Path jobFile, List<Setting> settings, String key) {
    Optional<Place> set = place(settings, key);
    if (set.isPresent()) {
      return set.get();
    }
    YamlNode at = YamlText.read(jobFile);
    SettingTree.apply(at, settings);
    Place place = new Place("", 0, 0, key);
    for (String name : key.split("\\.")) {
      if (!at.entries().containsKey(name)) {
        return new Place("", 0, 0, key);
      }
      place = at.keyPlace(name);
      at = at.entries().get(name);
    }
    return place.key().startsWith("--")
        ? place
        : new Place(place.file(), place.line(), place.column(), key);
  }

  /** Where a key's value stands among settings; empty when they don't set it. */
  public static Optional<Place> place(List<Setting> settings, String key) {
    return settings.stream()
        .filter(setting -> setting.key().equals(key))
        .reduce((earlier, later) -> later)
        .map(Setting::valuePlace);
  }

  /**
   * A job from a terrain and a layup, everything else by default or by settings.
   *
   * @throws InputFault if anything isn't as src/contract.md says
   */
  public static Job of(Path terrain, Path layup, List<Setting> settings, Warnings warnings) {
    YamlNode root = new YamlNode(YamlNode.Kind.MAPPING, Place.file(""), null, "");
    YamlNode under = new YamlNode(YamlNode.Kind.MAPPING, Place.option("TERRAIN"), null, "");
    root.put("layup", Place.option("LAYUP"), argument("LAYUP", layup));
    root.put("terrain", Place.option("TERRAIN"), under);
    under.put("file", Place.option("TERRAIN"), argument("TERRAIN", terrain));
    SettingTree.apply(root, settings);
    return job(LayupReader.stem(terrain), root, JobOrigin.beside(terrain, settings), warnings);
  }

  /**
   * What cut and finish add to a layup's own errors, tools and machine, for commands that have no
   * job or need only this part of one.
   *
   * @param jobFile null for the defaults
   * @throws InputFault if anything in these settings isn't as src/contract.md says
   */
  public static Bench bench(Path jobFile, List<Setting> settings) {
    YamlNode root =
        jobFile == null
            ? new YamlNode(YamlNode.Kind.MAPPING, Place.file(""), null, "")
            : YamlText.mappingOf(
                YamlText.read(jobFile), "\"layup:\" and \"terrain:\" with \"file:\" under it");
    SettingTree.apply(root, settings);
    Keys keys = Keys.of(root, "", KEYS);
    Machine machine = MachineKeys.read(keys);
    return new Bench(ToolKeys.read(keys), machine, allowance(keys, machine));
  }

  /**
   * A terrain on a panel, and the shop, for commands that have no layup yet; no ply can be named in
   * the settings.
   *
   * @throws InputFault if anything isn't as src/contract.md says
   */
  public static Ground ground(Path terrain, List<Setting> settings, Warnings warnings) {
    YamlNode root = new YamlNode(YamlNode.Kind.MAPPING, Place.file(""), null, "");
    YamlNode under = new YamlNode(YamlNode.Kind.MAPPING, Place.option("TERRAIN"), null, "");
    root.put("terrain", Place.option("TERRAIN"), under);
    under.put("file", Place.option("TERRAIN"), argument("TERRAIN", terrain));
    SettingTree.apply(root, settings);
    Keys keys = Keys.of(root, "", KEYS);
    Machine machine = MachineKeys.read(keys);
    return new Ground(
        TerrainKeys.read(keys, new PlyNames(List.of()), GroundPlies.none(), warnings),
        PanelKeys.read(keys),
        new Bench(ToolKeys.read(keys), machine, allowance(keys, machine)));
  }

  private static YamlNode argument(String name, Path path) {
    return new YamlNode(YamlNode.Kind.QUOTED, Place.option(name), null, path.toString());
  }

  /** A reading of a panel that the job doesn't have would be passed over in silence. */
  private static void requireTiles(Layup layup, Job.PanelSpec panel) {
    for (MeasuredPlace place : layup.measured().places()) {
      boolean known = place.tile().isEmpty();
      for (int c = 1; c <= panel.columns() && !known; c++) {
        for (int r = 1; r <= panel.rows() && !known; r++) {
          known = PlanFiles.tile(c, r).equals(place.tile());
        }
      }
      if (!known) {
        throw new InputFault(
            place.where(),
            "measured on a panel \"" + place.tile() + "\" that this job doesn't have",
            "wanted "
                + PlanFiles.tile(1, 1)
                + (panel.tiled()
                    ? " to " + PlanFiles.tile(panel.columns(), panel.rows())
                    : ", its only one, or no tile"));
      }
    }
  }

  private static Job job(String file, YamlNode root, JobOrigin origin, Warnings warnings) {
    Keys keys = Keys.of(root, "", KEYS);
    String name = keys.text("name", "", "a name").strip();
    Job.PanelSpec panel = PanelKeys.read(keys);
    Path layupFile = keys.file("layup", "a layup file, such as layup.yaml");
    Layup layup = LayupReader.read(layupFile).on(panel.widthMm(), panel.heightMm());
    requireTiles(layup, panel);
    PlyNames plies = new PlyNames(layup.plies());
    Machine machine = MachineKeys.read(keys);
    CutAllowance allowance = allowance(keys, machine);
    // Readings of one of several panels say nothing of the others, which share the plies.
    Layup shared = panel.tiled() ? layup.ofTile("") : layup;
    TerrainSpec terrain =
        TerrainKeys.read(keys, plies, GroundPlies.of(shared, allowance, panel), warnings);
    List<Tool> tools = tools(keys, warnings);
    return new Job(
        name.isEmpty() ? file : name,
        name.isEmpty() ? layup.name() : name,
        layup,
        terrain,
        panel,
        ZoneKeys.read(keys, plies),
        new Bench(tools, machine, allowance),
        new RegionSpec(
            keys.number("minimum_area", 1, AREA), SurfaceSpec.read(keys), StandingSpec.read(keys)),
        new Additions(
            LetteringKeys.read(keys, plies),
            PinsSpec.read(keys, panel),
            OutlineSpec.read(
                keys,
                tools.stream().map(Tool::name).collect(Collectors.toCollection(TreeSet::new)))),
        origin.alsoReadFrom(layupFile));
  }

  private static List<Tool> tools(Keys keys, Warnings warnings) {
    List<Tool> tools = ToolKeys.read(keys);
    if (keys.list("tools", ToolKeys.WANTED).isEmpty()) {
      Tool assumed = tools.get(0);
      warnings.add(
          "tools-assumed",
          Template.fill(
              "the job lists no tools: planned for %s, flat, with flutes of %.2t mm, feed %.0t"
                  + " mm/min; list what is in the drawer",
              assumed.name(), assumed.fluteLengthMm(), assumed.feedMmPerMin()),
          "tools");
    }
    return tools;
  }

  private static CutAllowance allowance(Keys keys, Machine machine) {
    Keys clearance = keys.child("clearance", "minimum", "method");
    return new CutAllowance(
        clearance.number("minimum", 0.10, SMALL),
        clearance.choice("method", Method.RSS, Method.values()),
        machine.zErrorMm(),
        new Sanding(
            keys.number("sanding", 0.10, SMALL),
            keys.number("sanding_tolerance", 0.05, SMALL),
            keys.number("sanding_block", Sanding.USUAL_BLOCK_MM, BLOCK)),
        keys.choice("top", Top.LEAVE, Top.values()),
        keys.number("minimum_floor", 1.0, FLOOR));
  }
}
