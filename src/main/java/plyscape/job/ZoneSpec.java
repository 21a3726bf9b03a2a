package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;

/**
 * One zone of the job. Exactly one of {@code plyNumber} and {@code sink} is set. Immutable.
 *
 * @param name label
 * @param file resolved path of the map
 * @param where property name to accepted values, each a Double, Boolean, String, {@link Between},
 *     {@link Present} or {@link Not} (any of them); all entries must hold
 * @param plyNumber ply for the zone, or null
 * @param sink plies below what the terrain alone gives, or null
 * @param widthMm full width on the panel for lines, or null
 * @param groundWidthM full width on the ground for lines, or null
 * @param widthBy width from a property, or null
 * @param values classes of a raster whose cells are the zone; null when the file is a map of
 *     features
 * @param keep what happens to what is narrower than the smallest cutter
 */
public record ZoneSpec(
    String name,
    Path file,
    SortedMap<String, List<Object>> where,
    Integer plyNumber,
    Integer sink,
    Double widthMm,
    Double groundWidthM,
    WidthBy widthBy,
    List<Double> values,
    Keep keep) {

  /** A zone with fixed or no width whose narrow parts are given to neighbours. */
  public ZoneSpec(
      String name,
      Path file,
      SortedMap<String, List<Object>> where,
      Integer plyNumber,
      Integer sink,
      Double widthMm,
      Double groundWidthM) {
    this(name, file, where, plyNumber, sink, widthMm, groundWidthM, null, null, Keep.MERGE);
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
