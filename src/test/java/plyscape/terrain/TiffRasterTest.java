package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.tiff.TiffFixture;

/** GeoTIFF, on files written byte by byte after the format's text. */
class TiffRasterTest extends RasterTestBase {

  private static TiffFixture ground(double nodata) {
    double[] values = GROUND.clone();
    values[6] = nodata;
    return new TiffFixture(COLUMNS, ROWS, values);
  }

  @Override
  Path write(Path dir) throws IOException {
    return ground(-9999)
        .placed(500000, 5200000, 30, 30)
        .crs(32632, true, false)
        .nodata("-9999")
        .write(dir.resolve("g.tif"));
  }

  @Override
  double[] westNorthCell() {
    return new double[] {500000, 5200000, 30};
  }

  private double[] read(TiffFixture fixture) throws IOException {
    try (Raster raster = Rasters.open(fixture.write(dir.resolve("t.tif")), new Warnings())) {
      double[] all = raster.read(0, 0, COLUMNS, ROWS);
      // A second, smaller window must agree, whichever blocks it takes.
      assertArrayEquals(new double[] {all[5], all[6], all[9], all[10]}, raster.read(1, 1, 2, 2), 0);
      return all;
    }
  }

  /**
   * OGC 19-008r4; numbers of references.md section 3: scale 30 at (500000, 5200000), outer edge
   * (499985, 5200015).
   */
  @Test
  void pixelIsPoint_sticksOutHalfACell() throws IOException {
    Path file =
        ground(0)
            .placed(500000, 5200000, 30, 30)
            .crs(32632, true, true)
            .write(dir.resolve("p.tif"));
    try (Raster raster = Rasters.open(file, new Warnings())) {
      assertEquals(499985, raster.toGround().x(0, 0), 1e-9);
      assertEquals(5200015, raster.toGround().y(0, 0), 1e-9);
      assertEquals("EPSG:32632", raster.crs().id());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"uint8", "int16", "uint16", "int32", "uint32", "float32", "float64", "int8"})
  void sampleTypes_giveTheirValues(String type) throws IOException {
    assertArrayEquals(GROUND, read(ground(0).type(type).nodata("0")), 0);
    assertArrayEquals(GROUND, read(ground(0).type(type).nodata("0").bigEndian()), 0);
  }

  @Test
  void signsAndLargeValues_areTheTypes() throws IOException {
    double[] low = {-1, -100, 127, -128, 0, 1, 2, 3, 4, 5, 6, 7};
    assertArrayEquals(low, read(new TiffFixture(4, 3, low).type("int8")), 0);
    double[] high = {4294967295.0, 2147483648.0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
    assertArrayEquals(high, read(new TiffFixture(4, 3, high).type("uint32")), 0);
    double[] words = {65535, 32768, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
    assertArrayEquals(words, read(new TiffFixture(4, 3, words).type("uint16")), 0);
  }

  /** A nodata text with more digits than a float32 holds still means the float32 nearest to it. */
  @Test
  void nodata_isComparedInTheSampleType() throws IOException {
    double lowest = -(double) Float.MAX_VALUE;
    assertArrayEquals(GROUND, read(ground(lowest).nodata("-3.4028234663852886e+38")), 0);
    assertArrayEquals(GROUND, read(ground(-9999.9).nodata("-9999.9")), 0);
    assertArrayEquals(GROUND, read(ground(Double.NaN).nodata("nan")), 0);
    assertArrayEquals(GROUND, read(ground(Double.POSITIVE_INFINITY)), 0);
  }

  @Test
  void layouts_giveTheSameValues() throws IOException {
    assertArrayEquals(GROUND, read(ground(0).nodata("0").strips(1)), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").strips(2)), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").tiled(16)), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").bigTiff()), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").bigTiff().tiled(16).bigEndian()), 0);
  }

  @Test
  void compressions_giveTheSameValues() throws IOException {
    assertArrayEquals(GROUND, read(ground(0).nodata("0").compressed(8, 1)), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").compressed(32773, 1)), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").type("int16").compressed(8, 2)), 0);
    assertArrayEquals(
        GROUND, read(ground(0).nodata("0").type("int16").compressed(8, 2).bigEndian()), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").compressed(8, 3)), 0);
    assertArrayEquals(GROUND, read(ground(0).nodata("0").compressed(8, 3).tiled(16)), 0);
  }

  @Test
  void matrix_placesIt() throws IOException {
    double[] southUp = {10, 0, 0, 1000, 0, 10, 0, 2000, 0, 0, 0, 0, 0, 0, 0, 1};
    Path file = ground(0).tag(34264, southUp).write(dir.resolve("m.tif"));
    try (Raster raster = Rasters.open(file, new Warnings())) {
      assertEquals(1040, raster.toGround().x(4, 0), 1e-9);
      assertEquals(2030, raster.toGround().y(0, 3), 1e-9);
      AlignedRaster turned = new AlignedRaster(raster, raster.crs());
      assertEquals(2000, turned.frame().minY(), 1e-9);
      // Row 0 of the file is the south row already.
      assertArrayEquals(
          new double[] {10, 20, 30, 40}, turned.read(new GroundRaster.Window(0, 0, 4, 1)), 0);
    }
  }

  @Test
  void twoBandsAndPalette_areRefused() throws IOException {
    Path two = ground(0).secondBand(GROUND).write(dir.resolve("two.tif"));
    assertTrue(
        assertThrows(InputFault.class, () -> Rasters.open(two, new Warnings()))
            .getMessage()
            .contains("2 bands"));
    Path palette =
        ground(0)
            .type("uint8")
            .tag(262, new int[] {3})
            .tag(320, new int[768])
            .write(dir.resolve("palette.tif"));
    assertTrue(
        assertThrows(InputFault.class, () -> Rasters.open(palette, new Warnings()))
            .getMessage()
            .contains("palette"));
  }

  /** Samples that are no elevations or that aren't read are named as what they are. */
  @Test
  void otherSamples_areRefusedByWhatTheyAre() throws IOException {
    String[][] cases = {
      {"258", "16", "16 bits, floats"},
      {"339", "6", "complex"},
      {"258", "24", "24 bits, floats"}
    };
    for (String[] one : cases) {
      Path file = ground(0).write(dir.resolve("s.tif"));
      byte[] bytes = java.nio.file.Files.readAllBytes(file);
      patch(bytes, Integer.parseInt(one[0]), Integer.parseInt(one[1]));
      java.nio.file.Files.write(file, bytes);
      String message =
          assertThrows(InputFault.class, () -> Rasters.open(file, new Warnings())).getMessage();
      assertTrue(message.contains(one[2]), message);
    }
  }

  /** Changes the value of a SHORT tag in the first directory (TIFF 6.0, section 2). */
  private static void patch(byte[] bytes, int tag, int value) {
    var b = java.nio.ByteBuffer.wrap(bytes).order(java.nio.ByteOrder.LITTLE_ENDIAN);
    int at = b.getInt(4);
    for (int i = 0; i < b.getShort(at); i++) {
      if ((b.getShort(at + 2 + 12 * i) & 0xffff) == tag) {
        b.putShort(at + 2 + 12 * i + 8, (short) value);
      }
    }
  }

  /** Three points on the ground without a scale: TIFF 6.0 readers can't tell the cells' place. */
  @Test
  void controlPointsOnly_areRefused() throws IOException {
    Path file =
        ground(0)
            .tag(33922, new double[] {0, 0, 0, 5, 5, 0, 4, 0, 0, 9, 5, 0, 0, 3, 0, 5, 2, 0})
            .write(dir.resolve("gcp.tif"));
    assertTrue(
        assertThrows(InputFault.class, () -> Rasters.open(file, new Warnings()))
            .getMessage()
            .contains("3 ground control points"));
  }
}
