package plyscape.zones.map;

import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Envelope;

/**
 * What of a map matters. Immutable.
 *
 * @param layer name of the one layer to read of a file that has several, or "" for all
 * @param asked names of properties whose values are to be collected for messages
 * @param wanted which features are to be kept, by their properties
 * @param reach the part of the plane that can matter, in a CRS given by its code; null when all of
 *     it does. Formats for whole countries leave out what lies beyond; others may keep it.
 */
public record MapQuery(
    String layer,
    Set<String> asked,
    Predicate<Map<String, Object>> wanted,
    Function<String, Envelope> reach) {

  /** Takes copies. */
  public MapQuery {
    asked = Set.copyOf(asked);
  }

  /** Everything that a file has. */
  public static MapQuery everything() {
    return new MapQuery("", Set.of(), properties -> true, crs -> null);
  }
}
