package plyscape.zones;

import java.util.Collection;
import java.util.TreeSet;

/** Says which values a map has for the properties that a zone asked for in vain. */
final class FoundValues {

  /** Values shown for a property: enough to see a typo, few enough for a message. */
  private static final int MOST = 8;

  private FoundValues() {}

  /** A clause such as {@code : kind is one of field, river}. */
  static String of(MapFile file, Collection<String> names) {
    StringBuilder out = new StringBuilder();
    for (String name : names) {
      TreeSet<String> values = new TreeSet<>();
      for (MapFeature feature : file.features()) {
        Object value = PropertyPath.value(feature.properties(), name);
        if (value != null && values.size() <= MOST) {
          values.add(String.valueOf(value));
        }
      }
      out.append(out.length() == 0 ? ": " : "; ");
      if (values.isEmpty()) {
        out.append("no feature has ").append(name);
      } else {
        boolean more = values.size() > MOST;
        out.append(name)
            .append(" is one of ")
            .append(String.join(", ", values.stream().limit(MOST).toList()));
        out.append(more ? ", ..." : "");
      }
    }
    return out.append('.').toString();
  }
}
