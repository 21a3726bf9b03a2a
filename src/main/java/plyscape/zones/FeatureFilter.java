package plyscape.zones;

import java.util.List;
import java.util.SortedMap;

/** Decides which features a zone takes by their properties. */
final class FeatureFilter {

  private final SortedMap<String, List<Object>> where;

  FeatureFilter(SortedMap<String, List<Object>> where) {
    this.where = where;
  }

  /** Whether every named property has one of its accepted values. */
  boolean takes(MapFeature feature) {
    return where.entrySet().stream()
        .allMatch(
            e -> {
              Object value = PropertyPath.value(feature.properties(), e.getKey());
              return value != null && e.getValue().stream().anyMatch(wanted -> matches(value, wanted));
            });
  }

  /** A list has what one of its members has. Numbers and truth values may stand as text in a map, so text is compared. */
  private static boolean matches(Object value, Object wanted) {
    if (value instanceof List<?> list) {
      return list.stream().anyMatch(one -> matches(one, wanted));
    }
    return text(value).equals(text(wanted));
  }

  private static String text(Object value) {
    if (value instanceof Number number) {
      double d = number.doubleValue();
      return d == Math.rint(d) && Math.abs(d) < 1e15 ? Long.toString((long) d) : Double.toString(d);
    }
    return String.valueOf(value);
  }
}
