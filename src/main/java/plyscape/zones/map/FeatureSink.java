package plyscape.zones.map;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.locationtech.jts.geom.Envelope;

/** Takes the features of a file one by one, counts them all and keeps those that are asked for. */
public final class FeatureSink {

  private final String file;
  private final MapQuery query;
  private final MapLimits limits;
  private final PropertyTally tally;
  private final List<MapFeature> kept = new ArrayList<>();
  private final SortedMap<String, Integer> notes = new TreeMap<>();

  /** With the limits that hold. */
  public FeatureSink(String file, MapQuery query) {
    this(file, query, MapLimits.of(file));
  }

  /** With other limits. */
  public FeatureSink(String file, MapQuery query, MapLimits limits) {
    this.file = file;
    this.query = query;
    this.limits = limits;
    this.tally = new PropertyTally(query.asked());
  }

  /**
   * Counts a feature; a reader may ask before it makes the geometry.
   *
   * @return whether it is to be kept, by its properties
   */
  public boolean wants(Map<String, Object> properties) {
    tally.add(properties);
    return query.wanted().test(properties);
  }

  /** Whether a feature would be kept, by its properties; counts nothing. */
  public boolean picks(Map<String, Object> properties) {
    return query.wanted().test(properties);
  }

  /** Counts something that is broken and was left out or mended, by words for people, plural. */
  public void note(String what) {
    notes.merge(what, 1, Integer::sum);
  }

  /** Keeps a feature that is wanted. */
  public void keep(MapFeature feature) {
    limits.feature();
    kept.add(feature);
  }

  /** Counts a feature and keeps it if it is wanted. */
  public void add(MapFeature feature) {
    if (wants(feature.properties())) {
      keep(feature);
    }
  }

  /** Counts points of lines and outlines that are held. */
  public void points(int count) {
    limits.points(count);
  }

  /** How many features were counted so far. */
  public int seen() {
    return tally.features();
  }

  /** What was kept, as a map in a CRS. */
  public MapFile toMap(String crs, boolean crsStated) {
    return toMap(crs, crsStated, null);
  }

  /** What was kept, as a map that has everything within an extent. */
  public MapFile toMap(String crs, boolean crsStated, Envelope extent) {
    return new MapFile(file, crs, crsStated, List.copyOf(kept), tally, extent, notes);
  }
}
