package plyscape.zones.map;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.locationtech.jts.geom.Envelope;

/**
 * A map as its file has it, as far as it was asked for. Immutable.
 *
 * @param name file name for messages
 * @param crs code or WKT of its coordinates' CRS
 * @param crsStated whether the file itself says so, or it is the format's rule
 * @param features those that were asked for, in the file's order
 * @param tally how many features it has in all, and what properties they have
 * @param extent the part of the plane of which it has everything, in its CRS; null when it doesn't
 *     say
 * @param notes what is broken in it and was left out or mended, in words, to how often
 */
public record MapFile(
    String name,
    String crs,
    boolean crsStated,
    List<MapFeature> features,
    PropertyTally tally,
    Envelope extent,
    SortedMap<String, Integer> notes) {

  /** Takes copies. */
  public MapFile {
    features = List.copyOf(features);
    notes = Collections.unmodifiableSortedMap(new TreeMap<>(notes));
  }

  /** The features that have a CRS of their own, as a map in that; "" for those in the file's. */
  public MapFile in(String own) {
    List<MapFeature> some = features.stream().filter(f -> f.crs().equals(own)).toList();
    return new MapFile(name, own.isEmpty() ? crs : own, crsStated, some, tally, extent, notes);
  }
}
