package plyscape.zones.osm;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * Which tags of a closed way mean an area, and which a line: the format itself doesn't say. By the
 * mappers' community's table of polygon features; a heuristic, like all that read these maps use.
 */
final class AreaTags {

  private static final Set<String> ALWAYS =
      Set.of(
          "building",
          "building:part",
          "landuse",
          "amenity",
          "leisure",
          "boundary",
          "place",
          "shop",
          "tourism",
          "historic",
          "public_transport",
          "office",
          "military",
          "ruins",
          "craft",
          "golf",
          "indoor",
          "area:highway",
          "area");

  private static final Map<String, Set<String>> UNLESS =
      Map.of(
          "natural", Set.of("coastline", "cliff", "ridge", "arete", "tree_row"),
          "man_made", Set.of("cutline", "embankment", "pipeline"),
          "aeroway", Set.of("taxiway"));

  private static final Map<String, Set<String>> ONLY =
      Map.of(
          "waterway", Set.of("riverbank", "dock", "boatyard", "dam"),
          "highway", Set.of("services", "rest_area", "escape", "elevator"),
          "barrier", Set.of("city_wall", "ditch", "hedge", "retaining_wall", "wall", "spikes"),
          "railway", Set.of("station", "turntable", "roundhouse", "platform"),
          "power", Set.of("plant", "substation", "generator", "transformer"));

  private AreaTags() {}

  /** Whether one tag makes an area of a closed way. */
  static boolean area(String key, Object value) {
    if (value.equals("no")) {
      return false;
    }
    Set<String> only = ONLY.get(key);
    Set<String> unless = UNLESS.get(key);
    return ALWAYS.contains(key)
        || unless != null && !unless.contains(value)
        || only != null && only.contains(value);
  }

  /** Whether one tag makes a line even of a closed way. */
  static boolean line(String key, Object value) {
    return (UNLESS.containsKey(key) || ONLY.containsKey(key))
        && !area(key, value)
        && !value.equals("no");
  }

  /**
   * The tags of the area that a closed way is, or null when it is none. A way may be both: the
   * carriageway around a lawn, tagged once; the tags that mean a line aren't the area's then.
   */
  static Map<String, Object> ofArea(Map<String, Object> tags) {
    if ("no".equals(tags.get("area"))
        || tags.entrySet().stream().noneMatch(t -> area(t.getKey(), t.getValue()))) {
      return null;
    }
    boolean whole = "yes".equals(tags.get("area"));
    Map<String, Object> out = new LinkedHashMap<>(tags);
    out.entrySet().removeIf(t -> !whole && line(t.getKey(), t.getValue()));
    return out;
  }

  /** The tags of the line that a closed way is, or null when it is only an area. */
  static Map<String, Object> ofLine(Map<String, Object> tags) {
    if (ofArea(tags) == null) {
      return tags;
    }
    if ("yes".equals(tags.get("area"))
        || tags.entrySet().stream().noneMatch(t -> line(t.getKey(), t.getValue()))) {
      return null;
    }
    Map<String, Object> out = new LinkedHashMap<>(tags);
    out.entrySet().removeIf(t -> area(t.getKey(), t.getValue()));
    return out;
  }
}
