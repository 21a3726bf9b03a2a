package plyscape.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.TerrainSpec.BandSpec;
import plyscape.job.TerrainSpec.BreakList;
import plyscape.job.TerrainSpec.NamedBands;
import plyscape.job.yaml.InputFiles;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;

/** Reads {@code terrain} of a job. */
final class TerrainKeys {

  private static final String WHICH_FILE = "a terrain file, such as terrain.tif";
  private static final String CROP = "four numbers, [minx, miny, maxx, maxy] in crop_crs";
  private static final String[] KEYS = {
    "file",
    "crop",
    "crop_crs",
    "plies",
    "bands",
    "smoothing",
    "crs",
    "unit",
    "nodata",
    "encoding",
    "cell",
    "centre",
    "ground_width",
    "scale",
    "finest_cell",
    "sea_level",
    "sea_ply",
    "outline",
    "voids"
  };
  static final Range COORDINATE = Range.of(-1e9, 1e9, "units of crop_crs");
  static final Range ELEVATION = Range.of(-20_000, 100_000, "m");
  private static final List<String> METHODS =
      Stream.of(NamedBands.values())
          .map(value -> value.name().toLowerCase(Locale.ROOT).replace('_', '-'))
          .toList();

  private TerrainKeys() {}

  /**
   * Reads it.
   *
   * @param usual the plies it takes when it lists none
   */
  static TerrainSpec read(Keys job, PlyNames names, GroundPlies usual, Warnings warnings) {
    job.required("terrain", "keys with values, at least \"file:\"");
    Keys keys = job.child("terrain", KEYS);
    List<Integer> plies = plies(keys, names, usual, warnings);
    List<Path> files = files(keys);
    return new TerrainSpec(
        files.get(0),
        crop(keys),
        keys.text("crop_crs", "", "a code such as EPSG:32632"),
        plies,
        bands(keys, plies.size()),
        keys.number("smoothing", 0.4, Range.mm(0, 100)),
        TerrainOptionKeys.read(keys, files.subList(1, files.size()), names));
  }

  /** One file or a list of them, or all that fit a name with stars. */
  private static List<Path> files(Keys keys) {
    YamlNode node = keys.required("file", WHICH_FILE);
    if (node.kind() != YamlNode.Kind.LIST) {
      Keys.textOf(node, WHICH_FILE);
      return InputFiles.resolveAll(node);
    }
    if (node.items().isEmpty()) {
      throw new InputFault(node.place(), "an empty list", "wanted " + WHICH_FILE);
    }
    List<Path> files = new ArrayList<>();
    for (YamlNode item : node.items()) {
      Keys.textOf(item, WHICH_FILE);
      files.addAll(InputFiles.resolveAll(item));
    }
    return List.copyOf(files);
  }

  private static Box crop(Keys keys) {
    YamlNode node = keys.optional("crop", CROP);
    if (node == null) {
      return null;
    }
    List<Double> c = Keys.numbers(node, 4, COORDINATE, CROP);
    if (!(c.get(0) < c.get(2)) || !(c.get(1) < c.get(3))) {
      throw new InputFault(
          node.place(),
          "a crop " + c + " with a least value not below its greatest",
          "wanted " + CROP);
    }
    return new Box(c.get(0), c.get(1), c.get(2), c.get(3));
  }

  private static List<Integer> plies(
      Keys keys, PlyNames names, GroundPlies usual, Warnings warnings) {
    String wanted = "a list of ply names, top to bottom";
    YamlNode node = keys.optional("plies", wanted);
    if (node == null) {
      return breaksForAll(keys, usual) ? usual.all() : usual.usual(warnings);
    }
    List<Integer> numbers = new ArrayList<>();
    Set<Integer> seen = new HashSet<>();
    for (YamlNode item : Keys.listOf(node, wanted)) {
      int number = names.number(item);
      if (!seen.add(number)) {
        throw new InputFault(
            item.place(), "the ply " + item.found() + " a second time", "list each ply once");
      }
      numbers.add(number);
    }
    if (numbers.isEmpty()) {
      throw new InputFault(
          node.place(), "an empty list", "wanted " + wanted + ", or leave the key out for all");
    }
    List<Integer> sorted = numbers.stream().sorted().toList();
    if (!sorted.equals(numbers)) {
      warnings.add(
          "plies-order",
          "terrain.plies isn't in the layup's order and is taken from top to bottom, high ground"
              + " first",
          node.place().toString());
    }
    return sorted;
  }

  /** Whether as many break elevations are listed as part all plies from one another. */
  private static boolean breaksForAll(Keys keys, GroundPlies usual) {
    YamlNode bands = keys.optional("bands", "a value");
    return bands != null
        && bands.kind() == YamlNode.Kind.LIST
        && bands.items().size() == usual.all().size() - 1;
  }

  private static BandSpec bands(Keys keys, int plyCount) {
    String wanted =
        "one of " + String.join(", ", METHODS) + ", or a list of falling elevations in m";
    YamlNode node = keys.optional("bands", wanted);
    if (node == null) {
      return NamedBands.SCALE;
    }
    if (node.kind() != YamlNode.Kind.LIST) {
      if (!node.isScalar()) {
        throw new InputFault(node.place(), "found " + node.found(), "wanted " + wanted);
      }
      return NamedBands.values()[Keys.choiceOf(node, METHODS)];
    }
    return breaks(node, plyCount);
  }

  private static BreakList breaks(YamlNode node, int plyCount) {
    List<Double> breaks = new ArrayList<>();
    for (YamlNode item : node.items()) {
      double elevation = ELEVATION.check(item);
      if (!breaks.isEmpty() && !(elevation < breaks.get(breaks.size() - 1))) {
        throw new InputFault(
            item.place(),
            "a break at " + elevation + " m after one at " + breaks.get(breaks.size() - 1) + " m",
            "wanted falling elevations: the first parts the two upper plies");
      }
      breaks.add(elevation);
    }
    if (breaks.size() != plyCount - 1) {
      throw new InputFault(
          node.place(),
          "found "
              + breaks.size()
              + " breaks for "
              + plyCount
              + (plyCount == 1 ? " ply" : " plies"),
          "wanted " + (plyCount - 1) + ", one fewer than terrain.plies");
    }
    return new BreakList(List.copyOf(breaks));
  }
}
