package plyscape.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.fault.InputFault;
import plyscape.job.Keys.Range;

/** Reads {@code zones} of a job. */
final class ZoneKeys {

  private static final String WANTED = "a list of zones, each with keys such as name, file, where and ply";
  private static final String WHERE = "property names with a value or a list of values, such as {kind: river}";
  private static final int MOST_ZONES = 1000;

  private ZoneKeys() {}

  static List<ZoneSpec> read(Keys job, PlyNames plies) {
    List<YamlNode> items = job.list("zones", WANTED);
    if (items.size() > MOST_ZONES) {
      throw new InputFault(job.place("zones"), "found " + items.size() + " zones", "wanted at most " + MOST_ZONES);
    }
    List<ZoneSpec> zones = new ArrayList<>();
    for (YamlNode item : items) {
      zones.add(zone(item, zones.size() + 1, plies));
    }
    return zones;
  }

  private static ZoneSpec zone(YamlNode item, int number, PlyNames plies) {
    Keys keys =
        Keys.of(item, "zones." + number, "name", "file", "where", "ply", "sink", "width", "ground_width");
    if (keys.has("ply") == keys.has("sink")) {
      throw new InputFault(
          item.place(),
          keys.has("ply") ? "a zone with both \"ply\" and \"sink\"" : "a zone with neither \"ply\" nor \"sink\"",
          "wanted exactly one: a ply's name, or how many plies below the terrain's");
    }
    if (keys.has("width") && keys.has("ground_width")) {
      throw new InputFault(
          keys.place("ground_width"),
          "a zone with both \"width\" and \"ground_width\"",
          "wanted one: mm on the panel, or metres on the ground");
    }
    Path file = keys.file("file", "a map file, such as zones.geojson");
    Double sink = keys.numberOrNull("sink", Range.whole(0, 500, "plies below the terrain's"));
    return new ZoneSpec(
        keys.text("name", LayupReader.stem(file), "a name"),
        file,
        where(keys),
        sink == null ? plies.number(keys.required("ply", "a ply's name")) : null,
        sink == null ? null : sink.intValue(),
        keys.numberOrNull("width", Range.mm(0.01, 1000)),
        keys.numberOrNull("ground_width", Range.of(0.001, 1e6, "m")));
  }

  /** Property names to accepted values; empty when the key isn't there. */
  static SortedMap<String, List<Object>> where(Keys keys) {
    SortedMap<String, List<Object>> out = new TreeMap<>();
    YamlNode node = keys.optional("where", WHERE);
    if (node == null) {
      return out;
    }
    for (Map.Entry<String, YamlNode> entry : Keys.freeKeys(node, WHERE).entrySet()) {
      YamlNode value = entry.getValue();
      List<Object> accepted = new ArrayList<>();
      for (YamlNode one : value.kind() == YamlNode.Kind.LIST ? value.items() : List.of(value)) {
        accepted.add(scalar(one));
      }
      if (accepted.isEmpty()) {
        throw new InputFault(value.place(), "an empty list", "wanted at least one value");
      }
      out.put(entry.getKey(), Collections.unmodifiableList(accepted));
    }
    return out;
  }

  /** A Double, Boolean or String; quotes make a String of anything. */
  private static Object scalar(YamlNode value) {
    if (!value.isScalar()) {
      throw new InputFault(value.place(), "found " + value.found(), "wanted " + WHERE);
    }
    if (value.kind() == YamlNode.Kind.QUOTED) {
      return value.text();
    }
    Double number = Decimal.parse(value.text());
    if (number != null) {
      return number;
    }
    return switch (value.text()) {
      case "true" -> Boolean.TRUE;
      case "false" -> Boolean.FALSE;
      default -> value.text();
    };
  }
}
