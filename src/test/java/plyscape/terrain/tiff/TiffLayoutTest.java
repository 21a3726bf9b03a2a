package plyscape.terrain.tiff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.terrain.Rasters;
import plyscape.terrain.TerrainReader;
import plyscape.terrain.raster.Raster;

/**
 * Files that another program wrote (GDAL 3.6.2), one a layout; what they hold is a plane, so that
 * every cell is known.
 */
class TiffLayoutTest {

  private static final Path FOLDER = Path.of("src/test/resources/plyscape/terrain/layouts");
  private static final int COLUMNS = 40;
  private static final int ROWS = 30;

  @ParameterizedTest
  @CsvSource({
    "u8-lzw-p2, 0",
    "i8-deflate, -80",
    "i16-lzw-p2-tiles, 0",
    "u16-packbits, 0",
    "i32-zstd-p2-big, 0",
    "u32-lzw-high-first, 0",
    "f32-lzw-p3, 0.5",
    "f32-deflate-p3-high-first, 0.5",
    "f32-zstd-p3-tiles, 0.5",
    "f64-deflate-p2, 0.5",
    "f64-zstd-p3-big-high-first, 0.5",
    "f64-none-nan, 0.5",
    "i16-scaled, 0",
    "i64-deflate, 0",
    "f32-mask, 0.5",
    "f32-mask-tiles, 0.5",
    "f32-mask-beside, 0.5",
    "u8-alpha-p2, 0",
    "f32-alpha-p3-tiles, 0.5",
    "f32-alpha-apart, 0.5",
    "u8-overviews, 0",
    "u8-two-images, 0",
    "u8-fathoms, 0"
  })
  void plane_comesOutOfEveryLayout(String name, double more) throws IOException {
    try (Raster raster = open(name)) {
      assertEquals("EPSG:32632", raster.crs().id());
      assertEquals(500000, raster.toGround().x(0, 0), 1e-9);
      check(raster.read(0, 0, COLUMNS, ROWS), 0, 0, COLUMNS, more);
      check(raster.read(5, 4, 20, 17), 5, 4, 20, more);
    }
  }

  private static Raster open(String name) {
    return Rasters.open(FOLDER.resolve(name + ".tif"), new Warnings());
  }

  private static void check(double[] values, int column, int row, int wide, double more) {
    for (int i = 0; i < values.length; i++) {
      int c = column + i % wide;
      int r = row + i / wide;
      assertEquals(
          c == 7 && r == 5 ? Double.NaN : 100 + c + 2 * r + more,
          values[i],
          0,
          "column " + c + ", row " + r);
    }
  }

  @Test
  void feet_areSaidByTheFile() throws IOException {
    try (Raster raster = open("f32-feet")) {
      assertEquals(0.3048, raster.metresPerValue(), 0);
      assertEquals(100, raster.read(0, 0, 1, 1)[0] * raster.metresPerValue(), 1e-4);
    }
  }

  /** Smaller copies say nothing; a second image and a unit that nobody knows are told. */
  @Test
  void whatIsntRead_isTold() throws IOException {
    Warnings warnings = new Warnings();
    Rasters.open(FOLDER.resolve("u8-overviews.tif"), warnings).close();
    assertEquals(0, warnings.list().size());
    Rasters.open(FOLDER.resolve("u8-two-images.tif"), warnings).close();
    assertEquals("more-images", warnings.list().get(0).code());
    TerrainReader.read(
        new TerrainSpec(
            FOLDER.resolve("u8-fathoms.tif"),
            null,
            "",
            List.of(1, 2),
            TerrainSpec.NamedBands.SCALE,
            0,
            TerrainOptions.PLAIN),
        new Job.PanelSpec(240, 240, 6),
        1.5,
        warnings);
    assertEquals("unit", warnings.list().get(1).code());
    assertTrue(warnings.list().get(1).message().contains("fathom"));
  }

  @Test
  void tilesLeftOut_areVoid() throws IOException {
    try (Raster raster = open("i16-sparse")) {
      double[] values = raster.read(15, 0, 2, 1);
      assertEquals(115, values[0], 0);
      assertTrue(Double.isNaN(values[1]));
    }
  }

  @Test
  void unknownPacking_isRefusedWithWhatWouldDo() {
    String message = assertThrows(InputFault.class, () -> open("f32-lerc")).getMessage();
    assertTrue(message.contains("LERC (34887)") && message.contains("Deflate"), message);
  }
}
