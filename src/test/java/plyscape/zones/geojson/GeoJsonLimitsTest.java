package plyscape.zones.geojson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapLimits;
import plyscape.zones.map.MapQuery;

class GeoJsonLimitsTest {

  /** Two features, five points. */
  private static final String MAP =
      "{\"type\":\"FeatureCollection\",\"features\":["
          + "{\"type\":\"Feature\",\"properties\":{\"kind\":\"lane\"},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[1,1],[2,2],[3,1]]}},"
          + "{\"type\":\"Feature\",\"properties\":null,\"geometry\":{\"type\":\"MultiPoint\",\"coordinates\":[[1,1],[2,2]]}}]}";

  @TempDir Path dir;

  private MapFile read(long features, long points) throws IOException {
    Path file = dir.resolve("large.geojson");
    Files.writeString(file, MAP);
    MapLimits limits = new MapLimits(file.toString(), features, points);
    return GeoJsonReader.read(
        file, new FeatureSink(file.toString(), MapQuery.everything(), limits));
  }

  @Test
  void moreThanTheLimits_isRefusedWithTheFileNamed() throws IOException {
    assertEquals(2, read(2, 5).features().size());
    InputFault features = assertThrows(InputFault.class, () -> read(1, 5));
    assertTrue(features.getMessage().contains("more than 1 features"), features.getMessage());
    assertTrue(features.getMessage().contains("large.geojson"), features.getMessage());
    InputFault points = assertThrows(InputFault.class, () -> read(2, 4));
    assertTrue(points.getMessage().contains("more than 4 points"), points.getMessage());
  }
}
