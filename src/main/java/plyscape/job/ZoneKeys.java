package plyscape.job;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;

/** Reads {@code zones} of a job. */
final class ZoneKeys {

  private static final String WANTED =
      "a list of zones, each with keys such as name, file, where and ply";
  private static final int MOST_ZONES = 1000;
  private static final int MOST_VALUES = 1000;

  private ZoneKeys() {}

  static List<ZoneSpec> read(Keys job, PlyNames plies) {
    List<YamlNode> items = job.list("zones", WANTED);
    if (items.size() > MOST_ZONES) {
      throw new InputFault(
          job.place("zones"), "found " + items.size() + " zones", "wanted at most " + MOST_ZONES);
    }
    List<ZoneSpec> zones = new ArrayList<>();
    for (YamlNode item : items) {
      zones.add(zone(item, zones.size() + 1, plies));
    }
    return zones;
  }

  private static ZoneSpec zone(YamlNode item, int number, PlyNames plies) {
    Keys keys =
        Keys.of(
            item,
            "zones." + number,
            "name",
            "file",
            "layer",
            "where",
            "ply",
            "sink",
            "width",
            "ground_width",
            "values",
            "keep");
    requireOneWay(item, keys);
    MapPick map = map(keys, "a map file, such as zones.geojson");
    List<Double> values = values(keys);
    Double sink = keys.numberOrNull("sink", Range.whole(0, 500, "plies below the terrain's"));
    return new ZoneSpec(
        keys.text("name", LayupReader.stem(map.file()), "a name"),
        map,
        sink == null ? plies.number(keys.required("ply", "a ply's name")) : null,
        sink == null ? null : sink.intValue(),
        width(keys),
        values,
        keep(keys));
  }

  /** One way to say which ply shows, and at most one to say how wide lines are. */
  private static void requireOneWay(YamlNode item, Keys keys) {
    if (keys.has("ply") == keys.has("sink")) {
      throw new InputFault(
          item.place(),
          keys.has("ply")
              ? "a zone with both \"ply\" and \"sink\""
              : "a zone with neither \"ply\" nor \"sink\"",
          "wanted exactly one: a ply's name, or how many plies below the terrain's");
    }
    if (keys.has("width") && keys.has("ground_width")) {
      throw new InputFault(
          keys.place("ground_width"),
          "a zone with both \"width\" and \"ground_width\"",
          "wanted one: mm on the panel, or metres on the ground");
    }
  }

  /** Keys {@code file}, {@code layer} and {@code where}. */
  static MapPick map(Keys keys, String wanted) {
    return new MapPick(
        keys.file("file", wanted), keys.text("layer", "", "a layer's name"), WhereKeys.read(keys));
  }

  private static LineWidth width(Keys keys) {
    ZoneSpec.WidthBy by = widthBy(keys);
    return by != null
        ? new LineWidth(null, null, by)
        : new LineWidth(
            keys.numberOrNull("width", Range.mm(0.01, 1000)),
            keys.numberOrNull("ground_width", Range.of(0.001, 1e6, "m")),
            null);
  }

  /**
   * {@code width} or {@code ground_width} as {property: NAME, times: FACTOR, otherwise: WIDTH}, or
   * null.
   */
  private static ZoneSpec.WidthBy widthBy(Keys zone) {
    for (String key : List.of("width", "ground_width")) {
      YamlNode value = zone.optional(key, "a width, or the property that has it");
      if (value != null && value.kind() == YamlNode.Kind.MAPPING) {
        Keys keys = Keys.of(value, key, "property", "times", "otherwise");
        return new ZoneSpec.WidthBy(
            Keys.textOf(keys.required("property", "a property's name"), "a property's name"),
            keys.number("times", 1, Range.of(1e-6, 1e6, "")),
            keys.numberOrNull("otherwise", Range.of(0.001, 1e6, "")),
            key.equals("ground_width"));
      }
    }
    return null;
  }

  /** {@code values}: classes of a raster, or null. */
  private static List<Double> values(Keys zone) {
    String wanted = "numbers of the raster's classes, such as [41, 42, 43]";
    YamlNode node = zone.optional("values", wanted);
    if (node == null) {
      return null;
    }
    for (String key : List.of("layer", "where", "width", "ground_width")) {
      if (zone.has(key)) {
        throw new InputFault(
            zone.place(key),
            "a zone with both \"values\" and \"" + key + "\"",
            "wanted values for a raster, or " + key + " for a map of features");
      }
    }
    List<YamlNode> items = node.kind() == YamlNode.Kind.LIST ? node.items() : List.of(node);
    if (items.isEmpty() || items.size() > MOST_VALUES) {
      throw new InputFault(
          node.place(),
          "found " + items.size() + " values",
          "wanted 1 to " + MOST_VALUES + " " + wanted);
    }
    return items.stream().map(item -> Range.of(-1e9, 1e9, "").check(item)).toList();
  }

  private static ZoneSpec.Keep keep(Keys zone) {
    String wanted = "merge, widen or drop";
    String text = zone.text("keep", "merge", wanted);
    return switch (text) {
      case "merge" -> ZoneSpec.Keep.MERGE;
      case "widen" -> ZoneSpec.Keep.WIDEN;
      case "drop" -> ZoneSpec.Keep.DROP;
      default ->
          throw new InputFault(zone.place("keep"), "found \"" + text + "\"", "wanted " + wanted);
    };
  }
}
