package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Mutant;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;

/**
 * Broken and oversized maps: read as far as they mean something, or refused with the file named;
 * nothing else.
 */
class GeoJsonMutationTest {

  private static final GroundFrame FRAME =
      new GroundFrame(
          "EPSG:32638", new Box(444000, 3684000, 445000, 3685000), new Box(5, 5, 105, 105), 1);

  private static final String MAP =
      "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:32638\"}},\"features\":["
          + "{\"type\":\"Feature\",\"id\":7,\"properties\":{\"kind\":\"wood\",\"tags\":{\"a\":[1,null]}},\"geometry\":{\"type\":"
          + "\"Polygon\",\"coordinates\":[[[444100,3684100],[444900,3684100],[444900,3684900],[444100,3684100]],"
          + "[[444500,3684200],[444600,3684200],[444600,3684300],[444500,3684200]]]}},"
          + "{\"type\":\"Feature\",\"properties\":null,\"geometry\":{\"type\":\"GeometryCollection\",\"geometries\":["
          + "{\"type\":\"MultiLineString\",\"coordinates\":[[[444000.5,3684000,12],[445000,3685000,null]]]},"
          + "{\"type\":\"MultiPoint\",\"coordinates\":[[444100,3684100]]}]}},"
          + "{\"type\":\"Feature\",\"properties\":{\"name\":\"\\u00e9\"},\"geometry\":null}]}";

  private static final int MUTANTS = 1500;

  @TempDir Path dir;

  private void read(Path file) {
    ZoneSpec spec = ZoneSpecs.of("any", file, new TreeMap<>(), 2, null, ZoneSpecs.mm(1.5));
    ZoneReader.read(List.of(spec), FRAME, new Warnings());
  }

  @Test
  void mutants_areReadOrRefused() throws IOException {
    byte[] whole = MAP.getBytes(StandardCharsets.UTF_8);
    Path file = dir.resolve("mutant.geojson");
    int read = 0;
    int refused = 0;
    for (int seed = 0; seed < MUTANTS; seed++) {
      byte[] mutant = Mutant.of(whole, seed);
      Files.write(file, mutant);
      try {
        read(file);
        read++;
      } catch (InputFault fault) {
        assertTrue(
            fault.getMessage().contains("mutant.geojson")
                || fault.place().file().contains("mutant.geojson"),
            fault.getMessage());
        refused++;
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError(
            "seed " + seed + ": " + new String(mutant, StandardCharsets.ISO_8859_1), e);
      }
    }
    // Neither everything passes nor nothing does: the mutants do reach all layers.
    assertTrue(
        read > MUTANTS / 10 && refused > MUTANTS / 10, read + " read, " + refused + " refused");
  }

  @Test
  void deepNesting_isRefused() throws IOException {
    Path file = dir.resolve("deep.geojson");
    Files.writeString(file, "{\"type\":\"Polygon\",\"coordinates\":" + "[".repeat(200_000));
    assertThrows(InputFault.class, () -> read(file));
    Files.writeString(file, "{\"type\":\"GeometryCollection\",\"geometries\":[".repeat(100_000));
    assertThrows(InputFault.class, () -> read(file));
  }
}
