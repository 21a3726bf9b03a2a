package plyscape.zones;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import plyscape.job.ZoneSpec;
import plyscape.zones.map.PropertyPath;

/** Decides which features a zone takes by their properties. */
final class FeatureFilter {

  private final SortedMap<String, List<Object>> where;

  FeatureFilter(SortedMap<String, List<Object>> where) {
    this.where = where;
  }

  /** Whether every named property has one of its accepted values. */
  boolean takes(Map<String, Object> properties) {
    return where.entrySet().stream()
        .allMatch(e -> any(PropertyPath.value(properties, e.getKey()), e.getValue()));
  }

  private static boolean any(Object value, List<Object> accepted) {
    return accepted.stream().anyMatch(wanted -> matches(value, wanted));
  }

  /**
   * A list has what one of its members has. Numbers and truth values may stand as text in a map, so
   * text is compared.
   */
  private static boolean matches(Object value, Object wanted) {
    if (wanted instanceof ZoneSpec.Present present) {
      return present.wanted() == (value != null);
    }
    if (wanted instanceof ZoneSpec.Not not) {
      return !any(value, not.values());
    }
    if (value instanceof List<?> list) {
      return list.stream().anyMatch(one -> matches(one, wanted));
    }
    if (wanted instanceof ZoneSpec.Between between) {
      Double number = PropertyPath.number(value);
      return number != null
          && (between.least() == null || number >= between.least())
          && (between.most() == null || number <= between.most());
    }
    return value != null && text(value).equals(text(wanted));
  }

  /** What is wanted, for messages: {@code kind: road or lane; lanes: 2 to 4; name: any}. */
  String words() {
    List<String> out = new ArrayList<>();
    where.forEach((property, accepted) -> out.add(property + ": " + words(accepted)));
    return String.join("; ", out);
  }

  private static String words(List<Object> accepted) {
    return String.join(" or ", accepted.stream().map(FeatureFilter::word).toList());
  }

  private static String word(Object wanted) {
    if (wanted instanceof ZoneSpec.Present present) {
      return present.wanted() ? "any" : "absent";
    }
    if (wanted instanceof ZoneSpec.Not not) {
      return "not " + words(not.values());
    }
    if (wanted instanceof ZoneSpec.Between between) {
      return between.least() == null
          ? "up to " + text(between.most())
          : between.most() == null
              ? "from " + text(between.least())
              : text(between.least()) + " to " + text(between.most());
    }
    return text(wanted);
  }

  private static String text(Object value) {
    if (value instanceof Number number) {
      double d = number.doubleValue();
      return d == Math.rint(d) && Math.abs(d) < 1e15 ? Long.toString((long) d) : Double.toString(d);
    }
    return String.valueOf(value);
  }
}
