package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.ZoneSpec;

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

  private static final String[] SPLICES = {
    "null",
    "-",
    "1e400",
    "[[",
    "]]",
    "{",
    "}",
    "\"",
    "\\",
    "999999999999999999999999",
    "-1e300",
    "true",
    ",",
    ":",
    "\0",
    "\uFEFF",
    "\"type\":\"Feature\",",
    "\"coordinates\":[],",
    "[1]",
    "\"Polygon\"",
    "NaN"
  };

  @TempDir Path dir;

  private void read(Path file) {
    ZoneSpec spec = new ZoneSpec("any", file, new TreeMap<>(), 2, null, 1.5, null);
    ZoneReader.read(List.of(spec), FRAME, new Warnings());
  }

  @Test
  void mutants_areReadOrRefused() throws IOException {
    Random random = new Random(20);
    Path file = dir.resolve("mutant.geojson");
    int read = 0;
    int refused = 0;
    for (int round = 0; round < 3000; round++) {
      byte[] mutant = mutate(random);
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
            "round " + round + ": " + new String(mutant, StandardCharsets.ISO_8859_1), e);
      }
    }
    // Neither everything passes nor nothing does: the mutants do reach all layers.
    assertTrue(read > 300 && refused > 300, read + " read, " + refused + " refused");
  }

  private static byte[] mutate(Random random) {
    byte[] bytes = MAP.getBytes(StandardCharsets.UTF_8);
    int changes = 1 + random.nextInt(3);
    for (int i = 0; i < changes && bytes.length > 1; i++) {
      int at = random.nextInt(bytes.length);
      switch (random.nextInt(5)) {
        case 0 -> bytes[at] = (byte) random.nextInt(256);
        case 1 -> bytes[at] = (byte) ('0' + random.nextInt(10));
        case 2 -> bytes = random.nextInt(4) == 0 ? Arrays.copyOf(bytes, at) : bytes;
        case 3 -> bytes = splice(bytes, at, at, SPLICES[random.nextInt(SPLICES.length)]);
        default -> {
          int end = Math.min(bytes.length, at + 1 + random.nextInt(12));
          bytes =
              splice(
                  bytes,
                  at,
                  end,
                  random.nextBoolean() ? "" : SPLICES[random.nextInt(SPLICES.length)]);
        }
      }
    }
    return bytes;
  }

  private static byte[] splice(byte[] bytes, int from, int to, String middle) {
    byte[] put = middle.getBytes(StandardCharsets.UTF_8);
    byte[] out = new byte[from + put.length + bytes.length - to];
    System.arraycopy(bytes, 0, out, 0, from);
    System.arraycopy(put, 0, out, from, put.length);
    System.arraycopy(bytes, to, out, from + put.length, bytes.length - to);
    return out;
  }

  @Test
  void deepNesting_isRefused() throws IOException {
    Path file = dir.resolve("deep.geojson");
    Files.writeString(file, "{\"type\":\"Polygon\",\"coordinates\":" + "[".repeat(200_000));
    assertThrows(InputFault.class, () -> read(file));
    Files.writeString(file, "{\"type\":\"GeometryCollection\",\"geometries\":[".repeat(100_000));
    assertThrows(InputFault.class, () -> read(file));
  }

  @Test
  void moreThanTheLimits_isRefusedWithTheFileNamed() throws IOException {
    Path file = dir.resolve("large.geojson");
    Files.writeString(file, MAP);
    assertEquals(
        3, GeoJsonReader.read(file, new MapLimits("large.geojson", 3, 11)).features().size());
    InputFault features =
        assertThrows(
            InputFault.class,
            () -> GeoJsonReader.read(file, new MapLimits("large.geojson", 2, 11)));
    assertTrue(features.getMessage().contains("more than 2 features"), features.getMessage());
    InputFault points =
        assertThrows(
            InputFault.class,
            () -> GeoJsonReader.read(file, new MapLimits("large.geojson", 3, 10)));
    assertTrue(points.getMessage().contains("more than 10 points"), points.getMessage());
  }
}
