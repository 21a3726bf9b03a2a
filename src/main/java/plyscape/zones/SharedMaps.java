package plyscape.zones;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plyscape.fault.InputFault;
import plyscape.files.InputCache;
import plyscape.job.FilesBeside;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapQuery;

/**
 * Maps that several jobs of a batch use: read once as a whole, and what each job asks for picked
 * from that. Only of maps that leave room for others.
 */
final class SharedMaps {

  /**
   * Bytes of memory for a byte of the file, at most: 2.1 were measured of a GeoJSON of 75 000
   * outlines, 2.5 of the same as a GeoPackage.
   */
  private static final int HEAP_PER_BYTE = 4;

  /** A point: its coordinates as an object, the way to it, and what lists have to spare. */
  private static final long POINT_BYTES = 44;

  private static final long FEATURE_BYTES = 400;
  private static final long PROPERTY_BYTES = 120;

  private SharedMaps() {}

  /** What is asked for of a map, read alone where it isn't worth sharing. */
  static MapFile read(MapFormat format, Path file, MapQuery query) {
    if (!format.wholly() || !fits(file)) {
      return format.read(file, query);
    }
    List<Path> files = new ArrayList<>(List.of(file));
    files.addAll(new FilesBeside().of(file));
    Optional<MapFile> whole =
        InputCache.of(files)
            .get(
                "map " + query.layer(),
                () -> whole(format, file, query.layer()),
                map -> map.map(SharedMaps::bytes).orElse(0L));
    return whole.isEmpty() ? format.read(file, query) : picked(whole.get(), file, query);
  }

  private static boolean fits(Path file) {
    try {
      return Files.size(file) * HEAP_PER_BYTE < InputCache.mostBytes();
    } catch (IOException e) {
      return false;
    }
  }

  /** Empty if all of it is more than is let in: what is asked for may be less. */
  private static Optional<MapFile> whole(MapFormat format, Path file, String layer) {
    try {
      return Optional.of(
          format.read(file, new MapQuery(layer, Set.of(), properties -> true, crs -> null)));
    } catch (InputFault e) {
      return Optional.empty();
    }
  }

  private static MapFile picked(MapFile whole, Path file, MapQuery query) {
    FeatureSink sink = new FeatureSink(file.toString(), query);
    whole.features().forEach(sink::add);
    MapFile some = sink.toMap(whole.crs(), whole.crsStated(), whole.extent());
    return new MapFile(
        some.name(),
        some.crs(),
        some.crsStated(),
        some.features(),
        some.tally(),
        some.extent(),
        whole.notes());
  }

  private static long bytes(MapFile map) {
    long sum = 0;
    for (MapFeature feature : map.features()) {
      sum += FEATURE_BYTES + PROPERTY_BYTES * feature.properties().size();
      sum += feature.geometry() == null ? 0 : POINT_BYTES * feature.geometry().getNumPoints();
    }
    return sum;
  }
}
