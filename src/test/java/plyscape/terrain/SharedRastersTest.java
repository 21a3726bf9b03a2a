package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.files.FileDigest;
import plyscape.files.InputCache;
import plyscape.terrain.raster.Raster;

/** Rasters that are shared between jobs give what each would have read alone. */
class SharedRastersTest {

  @TempDir Path folder;

  private static InputCache.Scope scope() {
    return InputCache.open(100_000_000, () -> System.currentTimeMillis() + 10_000);
  }

  /** Two windows that share blocks, twice each. */
  @Test
  void windowsOfATiff_areTheSame_withBlocksThatWereUnpackedBefore() throws IOException {
    Path file = Path.of("samples/tarn-hollow/terrain.tif");
    int[][] windows = {{100, 80, 220, 150}, {200, 100, 333, 300}};
    double[][] alone = new double[2][];
    for (int i = 0; i < 2; i++) {
      alone[i] = window(file, windows[i]);
    }
    try (InputCache.Scope scope = scope()) {
      FileDigest.of(file, "");
      for (int i = 0; i < 4; i++) {
        assertArrayEquals(alone[i % 2], window(file, windows[i % 2]));
      }
    }
  }

  private static double[] window(Path file, int[] window) throws IOException {
    try (Raster raster = Rasters.open(file, new Warnings())) {
      return raster.read(window[0], window[1], window[2], window[3]);
    }
  }

  /** A world file beside it is a part of it, and what its reader warned of is told each time. */
  @Test
  void aRasterHeldWhole_isSharedWithItsWarnings_untilAFileBesideItChanges() throws IOException {
    Path file = folder.resolve("a.asc");
    Files.writeString(file, AscText.of(6, 4, (column, row) -> column + 10 * row));
    Path prj = Files.writeString(folder.resolve("a.prj"), utm(33));
    try (InputCache.Scope scope = scope()) {
      Warnings alone = new Warnings();
      String crs = opened(file, prj, alone);
      for (int i = 0; i < 2; i++) {
        Warnings own = new Warnings();
        assertEquals(crs, opened(file, prj, own));
        assertEquals(alone.list(), own.list());
      }
      Files.writeString(prj, utm(32));
      assertEquals("EPSG:32632", opened(file, prj, new Warnings()));
    }
  }

  private static String utm(int zone) {
    return """
    PROJCS["WGS 84 / UTM zone %dN",GEOGCS["WGS 84",DATUM["WGS_1984",
    SPHEROID["WGS 84",6378137,298.257223563]],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433]],
    PROJECTION["Transverse_Mercator"],PARAMETER["latitude_of_origin",0],PARAMETER["central_meridian",%d],
    PARAMETER["scale_factor",0.9996],PARAMETER["false_easting",500000],PARAMETER["false_northing",0],
    UNIT["metre",1],AUTHORITY["EPSG","%d"]]
    """
        .formatted(zone, 6 * zone - 183, 32600 + zone);
  }

  private static String opened(Path file, Path beside, Warnings warnings) throws IOException {
    FileDigest.of(file, "");
    FileDigest.of(beside, "");
    try (Raster raster = Rasters.open(file, warnings)) {
      return raster.crs().id();
    }
  }
}
