package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;

/**
 * One zone of the job. Exactly one of {@code plyNumber} and {@code sink} is set. Immutable.
 *
 * @param name label
 * @param map the features that make the zone, or the raster if it has {@code values}
 * @param plyNumber ply for the zone, from 1, or null
 * @param sink plies below what the terrain alone gives, or null
 * @param width how wide lines become
 * @param values classes of a raster whose cells are the zone; null when the file is a map of
 *     features
 * @param keep what happens to what is narrower than the smallest cutter
 */
public record ZoneSpec(
    String name,
    MapPick map,
    Integer plyNumber,
    Integer sink,
    LineWidth width,
    List<Double> values,
    Keep keep) {

  /** Checks that it goes either to a ply or below the terrain's. */
  public ZoneSpec {
    Objects.requireNonNull(map);
    Objects.requireNonNull(width);
    if ((plyNumber == null) == (sink == null)) {
      throw new IllegalArgumentException("wanted either a ply or a sink");
    }
  }

  /** A zone whose lines have no width and whose narrow parts are given to neighbours. */
  public static ZoneSpec areas(String name, MapPick map, int plyNumber) {
    return new ZoneSpec(name, map, plyNumber, null, LineWidth.NONE, null, Keep.MERGE);
  }

  /** Resolved path of the map. */
  public Path file() {
    return map.file();
  }

  /** Which features are meant; see {@link MapPick}. */
  public SortedMap<String, List<Object>> where() {
    return map.where();
  }

  /** Numbers from {@code least} to {@code most}, both included; null for no limit. */
  public record Between(Double least, Double most) {}

  /** Whether the property is there at all. */
  public record Present(boolean wanted) {}

  /** None of these values; a feature without the property fits. */
  public record Not(List<Object> values) {}

  /**
   * Full width of a line from one of its properties.
   *
   * @param property its name
   * @param times what its number is multiplied by
   * @param otherwise the width where the property is no number, or null to skip such lines
   * @param ground whether widths are metres on the ground rather than mm on the panel
   */
  public record WidthBy(String property, double times, Double otherwise, boolean ground) {}

  /** What happens to what is too narrow or too small to be cut. */
  public enum Keep {
    /** The parts are given to neighbours. */
    MERGE,
    /** They are widened to what the smallest cutter needs. */
    WIDEN,
    /** Features that can't be cut whole are left out. */
    DROP
  }
}
