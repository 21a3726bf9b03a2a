package plyscape.zones.map;

import java.util.Collection;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Counts features and what properties they have, for messages to those who picked none of them. */
public final class PropertyTally {

  /** Values kept of a property: one more than a message shows. */
  private static final int MOST_VALUES = 9;

  /** Names of properties kept; a map with more of them is described well enough by these. */
  private static final int MOST_NAMES = 10_000;

  private final SortedMap<String, SortedSet<String>> values = new TreeMap<>();
  private final Map<String, Integer> names = new TreeMap<>();
  private int features;

  /** Collects the values of some properties. */
  public PropertyTally(Collection<String> asked) {
    asked.forEach(name -> values.put(name, new TreeSet<>()));
  }

  /** One more feature. */
  public void add(Map<String, Object> properties) {
    features++;
    for (String name : properties.keySet()) {
      if (names.size() < MOST_NAMES || names.containsKey(name)) {
        names.merge(name, 1, Integer::sum);
      }
    }
    for (Map.Entry<String, SortedSet<String>> asked : values.entrySet()) {
      SortedSet<String> found = asked.getValue();
      if (found.size() < MOST_VALUES) {
        Object value = PropertyPath.value(properties, asked.getKey());
        if (value != null) {
          found.add(String.valueOf(value));
        }
      }
    }
  }

  /** How many features there are. */
  public int features() {
    return features;
  }

  /** Some of the values of a property that was asked for, sorted; empty when no feature has it. */
  public SortedSet<String> values(String property) {
    return values.getOrDefault(property, new TreeSet<>());
  }

  /** Names of properties, the commonest first, of equals in alphabetical order. */
  public Collection<String> names() {
    return names.entrySet().stream()
        .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
        .map(Map.Entry::getKey)
        .toList();
  }
}
