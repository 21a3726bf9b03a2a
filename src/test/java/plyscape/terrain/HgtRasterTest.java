package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;

/**
 * SRTM tiles; sizes, order and void after the mission's documents, as quoted in references.md,
 * section 3.
 */
class HgtRasterTest {

  @TempDir Path dir;

  /** Column minus row, void at column 2, row 1. */
  private Path tile(String name, int posts) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(2 * posts * posts);
    for (int row = 0; row < posts; row++) {
      for (int column = 0; column < posts; column++) {
        bytes.putShort((short) (column == 2 && row == 1 ? -32768 : column - row));
      }
    }
    return Files.write(dir.resolve(name), bytes.array());
  }

  /**
   * N34W119 spans 34 to 35 N, 119 to 118 W; posts stand on the degree lines, so cells stick out by
   * half.
   */
  @Test
  void name_givesTheSouthWestCorner() throws IOException {
    for (int posts : new int[] {1201, 3601}) {
      try (Raster raster = Rasters.open(tile("N34W119.hgt", posts), new Warnings())) {
        assertEquals(posts, raster.columns());
        assertEquals("EPSG:4326", raster.crs().id());
        Affine a = raster.toGround();
        assertEquals(-119, a.x(0.5, 0.5), 1e-12);
        assertEquals(35, a.y(0.5, 0.5), 1e-12);
        assertEquals(-118, a.x(posts - 0.5, 0), 1e-12);
        assertEquals(34, a.y(0, posts - 0.5), 1e-12);
        assertArrayEquals(new double[] {-1, 0, Double.NaN, 2}, raster.read(0, 1, 4, 1), 0);
        assertArrayEquals(new double[] {1 - posts}, raster.read(0, posts - 1, 1, 1), 0);
      }
    }
  }

  @Test
  void southAndEast_haveTheirSigns() throws IOException {
    try (Raster raster = Rasters.open(tile("s01e006.hgt", 1201), new Warnings())) {
      assertEquals(6, raster.toGround().x(0.5, 0), 1e-12);
      assertEquals(0, raster.toGround().y(0, 0.5), 1e-12);
    }
  }

  @Test
  void otherNamesAndSizes_areRefused() throws IOException {
    Path unnamed = tile("hill.hgt", 1201);
    assertTrue(
        assertThrows(InputFault.class, () -> Rasters.open(unnamed, new Warnings()))
            .getMessage()
            .contains("N55W003"));
    Path odd = Files.write(dir.resolve("N01E001.hgt"), new byte[1000]);
    assertTrue(
        assertThrows(InputFault.class, () -> Rasters.open(odd, new Warnings()))
            .getMessage()
            .contains("2884802"));
  }
}
