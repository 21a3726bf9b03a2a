package plyscape.zones.geojson;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.terrain.crs.CrsLookup;

/**
 * Reads the {@code crs} member of the GeoJSON format of 2008, which RFC 7946 dropped but which many
 * files still have.
 */
final class GeoJsonCrs {

  private static final Pattern EPSG =
      Pattern.compile("(?:URN:OGC:DEF:CRS:)?EPSG:(?:[0-9.]*:)?(\\d{3,6})");

  private GeoJsonCrs() {}

  /** A code; the place is blamed when the CRS isn't named. */
  static String code(Map<String, Object> crs, Place place) {
    Map<?, ?> properties = crs.get("properties") instanceof Map<?, ?> map ? map : Map.of();
    Object name = properties.get("name");
    Object code = properties.get("code");
    if (name instanceof String text) {
      return code(text, place);
    }
    if (code instanceof Double number && number == Math.rint(number)) {
      return code("EPSG:" + number.longValue(), place);
    }
    if (code instanceof String text) {
      return code(text.contains(":") ? text : "EPSG:" + text, place);
    }
    throw new InputFault(
        place,
        "a \"crs\" that doesn't name a CRS",
        "name one, such as EPSG:32632, or leave it out for WGS 84");
  }

  private static String code(String name, Place place) {
    String upper = name.strip().toUpperCase(Locale.ROOT);
    if (upper.contains("CRS84") || upper.equals("WGS84")) {
      return CrsLookup.WGS_84;
    }
    Matcher match = EPSG.matcher(upper);
    if (match.matches()) {
      return "EPSG:" + match.group(1);
    }
    if (upper.contains("[")) {
      return name;
    }
    throw new InputFault(
        place, "unknown CRS \"" + name + "\"", "name one by its code, such as EPSG:32632");
  }
}
