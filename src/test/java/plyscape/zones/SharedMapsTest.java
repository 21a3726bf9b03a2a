package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import plyscape.files.FileDigest;
import plyscape.files.InputCache;
import plyscape.job.FilesBeside;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapQuery;

/** Maps that are shared between jobs are picked from as if each had read them alone. */
class SharedMapsTest {

  private static final Path FOLDER = Path.of("src/test/resources/plyscape/zones/formats");

  private static final List<MapQuery> QUERIES =
      List.of(
          new MapQuery("", Set.of("kind"), found -> "wood".equals(found.get("kind")), crs -> null),
          new MapQuery("", Set.of("name"), found -> true, crs -> null));

  @Test
  void everyFormat_givesTheSameAloneAndShared() throws IOException {
    int shared = 0;
    for (Path file : files()) {
      for (MapQuery query : QUERIES) {
        shared += shared(file, query) ? 1 : 0;
      }
    }
    assertTrue(shared >= 5, shared + " were shared");
  }

  /** Whether two readings have their first feature in common. */
  private static boolean shared(Path file, MapQuery query) {
    MapFile alone = MapOpener.read(file, query);
    try (InputCache.Scope scope =
        InputCache.open(100_000_000, () -> System.currentTimeMillis() + 10_000)) {
      FileDigest.of(file, "");
      new FilesBeside().of(file).forEach(beside -> FileDigest.of(beside, ""));
      List<MapFeature> first = same(alone, MapOpener.read(file, query)).features();
      List<MapFeature> again = same(alone, MapOpener.read(file, query)).features();
      return !first.isEmpty() && first.get(0) == again.get(0);
    }
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.list(FOLDER)) {
      return Stream.concat(all, Stream.of(Path.of("samples/tarn-hollow/zones.geojson")))
          .filter(
              path ->
                  path.getFileName()
                      .toString()
                      .matches(".*\\.(geojson|gpkg|gpx|kml|kmz|shp|zip|osm|pbf)"))
          .sorted()
          .toList();
    }
  }

  private static MapFile same(MapFile alone, MapFile other) {
    assertEquals(alone.name(), other.name());
    assertEquals(alone.crs(), other.crs());
    assertEquals(alone.crsStated(), other.crsStated());
    assertEquals(alone.extent(), other.extent());
    assertEquals(alone.notes(), other.notes());
    assertEquals(alone.tally().features(), other.tally().features());
    assertEquals(alone.tally().names(), other.tally().names());
    assertEquals(alone.tally().values("kind"), other.tally().values("kind"));
    assertEquals(alone.features(), other.features());
    return other;
  }
}
