package plyscape.sample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The committed sample files are what the generator makes, and the map stands where it should. */
class SampleFilesTest {

  private static final Path TARN_HOLLOW = Path.of("samples", "tarn-hollow");

  @Test
  void terrain_isWhatTheGeneratorMakes() throws Exception {
    float[] kept = FloatTiff.values(Files.readAllBytes(TARN_HOLLOW.resolve("terrain.tif")));
    float[] made = TarnHollow.raster();
    assertEquals(600 * 600, kept.length);
    // A quarter metre is one step of the file's rounding: Math functions may differ in the last bit
    // between machines.
    assertArrayEquals(made, kept, 0.25f);
  }

  @Test
  void map_isWhatTheGeneratorMakes() throws Exception {
    String kept = Files.readString(TARN_HOLLOW.resolve("zones.geojson"), StandardCharsets.UTF_8);
    JsonNode made = new ObjectMapper().readTree(new TarnHollowMap().geoJson());
    JsonNode features = new ObjectMapper().readTree(kept).get("features");
    assertEquals(made.get("features").size(), features.size());
    Map<String, Integer> counts = new TreeMap<>();
    for (JsonNode feature : features) {
      counts.merge(feature.get("properties").get("kind").asText(), 1, Integer::sum);
    }
    assertEquals("[building, field, river, street, tarn, wood]", counts.keySet().toString());
    assertTrue(counts.get("building") >= 40, "too few houses for a village: " + counts);
  }

  /** EPSG:32632 to WGS 84 by PROJ 9 ({@code gdaltransform -s_srs EPSG:32632 -t_srs EPSG:4326}). */
  @Test
  void lonLat_agreesWithProj() {
    double[] corner = Utm32.lonLat(412000, 5601000);
    assertEquals(7.75774035038611, corner[0], 1e-11);
    assertEquals(50.5542998686756, corner[1], 1e-11);
  }
}
