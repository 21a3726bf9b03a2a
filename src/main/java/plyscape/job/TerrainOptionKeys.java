package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.job.GroundCover.Outline;
import plyscape.job.GroundCover.Sea;
import plyscape.job.GroundCover.Voids;
import plyscape.job.TerrainOptions.Centre;
import plyscape.job.TerrainOptions.Encoding;
import plyscape.job.TerrainOptions.PlaceSpec;
import plyscape.job.TerrainOptions.RasterSpec;
import plyscape.job.TerrainOptions.Unit;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;

/** Reads the rarer keys of {@code terrain}. */
final class TerrainOptionKeys {

  private static final String CENTRE = "two numbers, [x, y] in crop_crs";
  private static final String VOIDS = "fill, leave or a ply's name";
  private static final String OUTLINE =
      "keys file, where and outside, such as {file: park.geojson, outside: walnut}";

  private TerrainOptionKeys() {}

  static TerrainOptions read(Keys keys, List<Path> more, PlyNames names) {
    Centre centre = centre(keys);
    Double groundWidth = keys.numberOrNull("ground_width", Range.of(0.001, 1e8, "m"));
    Double scale = keys.numberOrNull("scale", Range.of(1, 1e9, ""));
    if (centre != null && (groundWidth == null) == (scale == null)) {
      throw new InputFault(
          keys.place("centre"),
          groundWidth == null
              ? "a centre without a size"
              : "a centre with both \"ground_width\" and \"scale\"",
          "wanted one: ground_width in metres, or scale such as 25000");
    }
    if (centre != null && keys.has("crop")) {
      throw new InputFault(
          keys.place("centre"), "both \"crop\" and \"centre\"", "wanted one of them");
    }
    if (centre == null && groundWidth != null) {
      throw new InputFault(
          keys.place("ground_width"), "a ground_width without a centre", "wanted centre: [x, y]");
    }
    return new TerrainOptions(
        more,
        raster(keys),
        new PlaceSpec(centre, groundWidth, scale),
        keys.numberOrNull("finest_cell", Range.mm(0.001, 100)),
        new GroundCover(sea(keys, names), voids(keys, names), outline(keys, names)));
  }

  /** {@code voids}: fill, leave or a ply; plies of those two names can't be meant here. */
  private static Voids voids(Keys keys, PlyNames names) {
    YamlNode node = keys.optional("voids", VOIDS);
    if (node == null) {
      return Voids.FILL_SMALL;
    }
    return switch (Keys.textOf(node, VOIDS)) {
      case "fill" -> new Voids(Voids.Rule.FILL, 0);
      case "leave" -> new Voids(Voids.Rule.LEAVE, 0);
      default -> new Voids(Voids.Rule.PLY, names.number(node));
    };
  }

  private static RasterSpec raster(Keys keys) {
    return new RasterSpec(
        keys.text("crs", "", "a code such as EPSG:32632"),
        keys.choice("unit", Unit.FROM_FILE, Unit.values()),
        keys.numberOrNull("nodata", Range.of(-1e40, 1e40, "")),
        encoding(keys),
        keys.numberOrNull("cell", Range.of(1e-6, 1e6, "m")));
  }

  /** Two of the encodings also have the names of tile services that use them. */
  private static Encoding encoding(Keys keys) {
    YamlNode node = keys.optional("encoding", "auto, grey, rgb-256 or rgb-tenth");
    String word = node == null || !node.isScalar() ? "" : node.text().strip();
    return switch (word) {
      case "terrarium" -> Encoding.RGB_256;
      case "terrain-rgb" -> Encoding.RGB_TENTH;
      default -> keys.choice("encoding", Encoding.AUTO, Encoding.values());
    };
  }

  private static Centre centre(Keys keys) {
    YamlNode node = keys.optional("centre", CENTRE);
    if (node == null) {
      return null;
    }
    List<Double> xy = Keys.numbers(node, 2, TerrainKeys.COORDINATE, CENTRE);
    return new Centre(xy.get(0), xy.get(1));
  }

  private static Sea sea(Keys keys, PlyNames names) {
    Double level = keys.numberOrNull("sea_level", TerrainKeys.ELEVATION);
    if (level == null && keys.has("sea_ply")) {
      throw new InputFault(
          keys.place("sea_ply"), "a sea_ply without a sea_level", "wanted sea_level in metres");
    }
    return level == null
        ? null
        : new Sea(level, names.number(keys.required("sea_ply", "a ply's name")));
  }

  private static Outline outline(Keys keys, PlyNames names) {
    if (keys.optional("outline", OUTLINE) == null) {
      return null;
    }
    Keys under = keys.child("outline", "file", "layer", "where", "outside");
    return new Outline(
        ZoneKeys.map(under, "a map file, such as park.geojson"),
        names.number(under.required("outside", "a ply's name")));
  }
}
