package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;

/** What every raster reader must do: one ground, the same values and places whatever the format. */
abstract class RasterTestBase {

  /** Four columns by three rows, north row first, one void; metres. */
  static final double[] GROUND = {10, 20, 30, 40, 50, 60, Double.NaN, 80, 90, 100, 110, 120};

  static final int COLUMNS = 4;
  static final int ROWS = 3;

  @TempDir Path dir;

  /** Writes the ground as a file of the format. */
  abstract Path write(Path dir) throws IOException;

  /** Outer corner of the north-west cell, and the cells' size. */
  abstract double[] westNorthCell();

  @Test
  void values_areThoseOfTheGround() throws IOException {
    try (Raster raster = Rasters.open(write(dir), new Warnings())) {
      assertEquals(COLUMNS, raster.columns());
      assertEquals(ROWS, raster.rows());
      assertArrayEquals(GROUND, raster.read(0, 0, COLUMNS, ROWS), 0);
    }
  }

  @Test
  void window_isReadAlone() throws IOException {
    try (Raster raster = Rasters.open(write(dir), new Warnings())) {
      assertArrayEquals(new double[] {Double.NaN, 80, 110, 120}, raster.read(2, 1, 2, 2), 0);
      assertArrayEquals(new double[] {50}, raster.read(0, 1, 1, 1), 0);
    }
  }

  @Test
  void place_isTheOuterCornerOfTheFirstCell() throws IOException {
    double[] want = westNorthCell();
    try (Raster raster = Rasters.open(write(dir), new Warnings())) {
      Affine a = raster.toGround();
      assertEquals(want[0], a.x(0, 0), 1e-9);
      assertEquals(want[1], a.y(0, 0), 1e-9);
      assertEquals(want[0] + COLUMNS * want[2], a.x(COLUMNS, 0), 1e-9);
      assertEquals(want[1] - ROWS * want[2], a.y(0, ROWS), 1e-9);
    }
  }

  @Test
  void brokenOff_isAnInputFaultThatNamesTheFile() throws IOException {
    Path whole = write(dir);
    byte[] bytes = Files.readAllBytes(whole);
    Path half =
        Files.write(
            dir.resolve("half-" + whole.getFileName()),
            java.util.Arrays.copyOf(bytes, bytes.length / 2));
    InputFault fault =
        assertThrows(
            InputFault.class,
            () -> {
              try (Raster raster = Rasters.open(half, new Warnings())) {
                raster.read(0, 0, COLUMNS, ROWS);
              }
            });
    assertEquals(half.toString(), fault.place().file());
  }
}
