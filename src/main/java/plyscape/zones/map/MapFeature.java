package plyscape.zones.map;

import java.util.Map;
import org.locationtech.jts.geom.Geometry;

/**
 * One feature of a map as its file has it. Immutable.
 *
 * @param label its id, or its name, or its place in the file, for messages
 * @param properties names to String, Double, Boolean, List or Map values; null values are left out
 * @param geometry in the file's coordinates, x east and y north; null or empty when it has none
 * @param trouble why the geometry can't be used, or ""
 * @param crs of its coordinates where it isn't the file's, or ""
 */
public record MapFeature(
    String label, Map<String, Object> properties, Geometry geometry, String trouble, String crs) {

  /** A feature in the file's CRS. */
  public MapFeature(
      String label, Map<String, Object> properties, Geometry geometry, String trouble) {
    this(label, properties, geometry, trouble, "");
  }
}
