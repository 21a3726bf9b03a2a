package plyscape.zones;

import java.util.Collection;
import java.util.SortedSet;
import plyscape.text.NearestName;
import plyscape.zones.map.PropertyTally;

/** Says which properties and values a map has to a zone that asked in vain. */
final class FoundValues {

  /** Values shown for a property: enough to see a typo, few enough for a message. */
  private static final int MOST = 8;

  private FoundValues() {}

  /** A clause such as {@code : kind is one of field, river}. */
  static String of(PropertyTally tally, Collection<String> names) {
    StringBuilder out = new StringBuilder();
    for (String name : names) {
      SortedSet<String> values = tally.values(name);
      out.append(out.length() == 0 ? ": " : "; ");
      if (values.isEmpty()) {
        out.append("no feature has ").append(name);
        out.append(
            tally.names().isEmpty() ? "" : " (" + NearestName.hint(name, tally.names()) + ")");
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
