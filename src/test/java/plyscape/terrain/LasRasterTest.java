package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.job.TerrainOptions;
import plyscape.terrain.raster.Raster;

/**
 * Clouds made here from the format's own table (ASPRS, LAS 1.4 R15; references, section 12): a
 * plane that rises 1 in 10 to the east, with trees 20 m above it.
 */
class LasRasterTest {

  private static final int SIDE = 20;

  @TempDir Path dir;
  private final Warnings warnings = new Warnings();

  /** Four ground points in each cell of 1 m, and a tree top; extra bytes behind each point. */
  private byte[] cloud(int format) {
    int header = format < 6 ? 227 : 375;
    byte[] geoKeys = {1, 0, 1, 0, 0, 0, 1, 0, 0, 12, 0, 0, 1, 0, (byte) 0x78, 0x7f};
    int before = header + 54 + geoKeys.length;
    int bytes = new int[] {20, 28, 26, 34, 57, 63, 30, 36, 38, 59, 67}[format] + 3;
    int points = SIDE * SIDE * 5;
    ByteBuffer b = ByteBuffer.allocate(before + points * bytes).order(ByteOrder.LITTLE_ENDIAN);
    b.put("LASF".getBytes(StandardCharsets.US_ASCII));
    b.put(24, (byte) 1).put(25, (byte) (format < 6 ? 2 : 4));
    b.putShort(94, (short) header).putInt(96, before).putInt(100, 1);
    b.put(104, (byte) format).putShort(105, (short) bytes);
    b.putInt(107, format < 6 ? points : 0);
    if (format >= 6) {
      b.putLong(247, points);
    }
    for (int axis = 0; axis < 3; axis++) {
      b.putDouble(131 + 8 * axis, 0.01).putDouble(155 + 8 * axis, axis == 0 ? 500_000 : 0);
    }
    b.putShort(header + 18, (short) 34735).putShort(header + 20, (short) geoKeys.length);
    b.position(header + 54);
    b.put(geoKeys);
    for (int i = 0; i < points; i++) {
      int at = before + i * bytes;
      int cell = i / 5;
      int x = 100 * (cell % SIDE) + 25 + 50 * (i % 2);
      int y = 100 * (cell / SIDE) + 25 + 50 * (i / 2 % 2);
      boolean tree = i % 5 == 4;
      b.putInt(at, x).putInt(at + 4, y).putInt(at + 8, x / 10 + (tree ? 2000 : 0));
      b.put(at + (format < 6 ? 15 : 16), (byte) (tree ? 5 : 2));
    }
    return b.array();
  }

  private Raster open(byte[] bytes, Double cell) throws IOException {
    Path file = Files.write(dir.resolve("cloud.las"), bytes);
    return RasterOpener.open(
        file,
        new TerrainOptions.RasterSpec(
            "", TerrainOptions.Unit.FROM_FILE, null, TerrainOptions.Encoding.AUTO, cell),
        warnings);
  }

  /** The plane's height at a cell's middle, 0.1 x, is the mean of its four points. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 3, 6, 10})
  void groundPoints_areMeansOfCells(int format) throws IOException {
    try (Raster raster = open(cloud(format), null)) {
      assertEquals(SIDE, raster.columns());
      assertEquals(SIDE, raster.rows());
      assertEquals("EPSG:32632", raster.crs().id());
      assertEquals(500_000, raster.toGround().x(0, 0), 1e-9);
      assertEquals(SIDE, raster.toGround().y(0, 0), 1e-9);
      assertEquals(0.05, raster.read(0, 3, 1, 1)[0], 0.006);
      assertEquals(1.95, raster.read(19, 3, 1, 1)[0], 0.006);
    }
    String said = warnings.list().get(0).message();
    assertTrue(said.contains("1600 ground points of 2000 were gathered in cells of 1 m"), said);
  }

  @Test
  void cellOfTheJob_isTaken_andFinerOnesHaveVoids() throws IOException {
    // From the first point at 0.25 to the last at 19.75.
    try (Raster raster = open(cloud(1), 0.25)) {
      assertEquals(79, raster.columns());
      double[] values = raster.read(0, 0, 79, 79);
      assertEquals(1600, Arrays.stream(values).filter(v -> !Double.isNaN(v)).count(), 1);
    }
    try (Raster raster = open(cloud(1), 5.0)) {
      assertEquals(4, raster.columns());
      assertEquals(0.25, raster.read(0, 0, 1, 1)[0], 0.006);
    }
  }

  @Test
  void brokenClouds_areFaults() throws IOException {
    byte[] whole = cloud(1);
    assertFault(Arrays.copyOf(whole, whole.length / 2), "can't hold");
    assertFault(Arrays.copyOf(whole, 100), "cut off");
    byte[] packed = whole.clone();
    packed[104] |= (byte) 0x80;
    assertFault(packed, "LAZ");
    byte[] unclassified = whole.clone();
    for (int i = 227 + 54 + 16; i < whole.length; i += 31) {
      unclassified[i + 15] = 1;
    }
    assertFault(unclassified, "no ground points");
  }

  private void assertFault(byte[] bytes, String said) {
    InputFault fault = assertThrows(InputFault.class, () -> open(bytes, null));
    assertTrue(fault.getMessage().contains(said), fault.getMessage());
    assertTrue(fault.getMessage().contains("cloud.las"), fault.getMessage());
  }
}
