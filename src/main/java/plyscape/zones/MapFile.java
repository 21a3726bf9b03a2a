package plyscape.zones;

import java.util.List;

/**
 * A map as its file has it. Immutable.
 *
 * @param name file name for messages
 * @param crs code or WKT of its coordinates' CRS
 * @param crsStated whether the file itself says so, or it is the format's rule
 * @param features in the file's order
 */
record MapFile(String name, String crs, boolean crsStated, List<MapFeature> features) {

  /** The features that have a CRS of their own, as a map in that; "" for those in the file's. */
  MapFile in(String own) {
    List<MapFeature> some = features.stream().filter(f -> f.crs().equals(own)).toList();
    return new MapFile(name, own.isEmpty() ? crs : own, crsStated, some);
  }
}
