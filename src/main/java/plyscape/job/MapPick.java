package plyscape.job;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Which features of which map are meant. Immutable.
 *
 * @param file resolved path of the map
 * @param layer name of the one layer meant of a file with several, or "" for all
 * @param where property name to accepted values, each a Double, Boolean, String, {@link
 *     ZoneSpec.Between}, {@link ZoneSpec.Present} or {@link ZoneSpec.Not} (any of them); all
 *     entries must hold
 */
public record MapPick(Path file, String layer, SortedMap<String, List<Object>> where) {

  /** Takes a copy. */
  public MapPick {
    Objects.requireNonNull(file);
    Objects.requireNonNull(layer);
    where = Collections.unmodifiableSortedMap(new TreeMap<>(where));
  }
}
