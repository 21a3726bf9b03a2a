package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.ClassGrid;
import plyscape.grid.GroundFrame;
import plyscape.terrain.tiff.TiffFixture;

class ClassReaderTest {

  @TempDir Path dir;

  /**
   * Land cover commonly comes with a palette (TIFF 6.0, section 5: PhotometricInterpretation 3,
   * ColorMap).
   */
  @Test
  void paletteAndWindow_giveTheNumbersOfTheCells() throws IOException {
    double[] cells = new double[64];
    for (int i = 0; i < 64; i++) {
      cells[i] = i;
    }
    Path file =
        new TiffFixture(8, 8, cells)
            .type("uint8")
            .tiled(16)
            .tag(262, new int[] {3})
            .tag(320, new int[768])
            .nodata("27")
            .placed(1000, 2080, 10, 10)
            .crs(32632, true, false)
            .write(dir.resolve("cover.tif"));
    // Columns 3 and 4, rows 3 and 4 from the north, and a cell around them.
    GroundFrame frame =
        new GroundFrame("EPSG:32632", new Box(1030, 2030, 1050, 2050), new Box(0, 0, 100, 100), 1);
    ClassGrid grid = ClassReader.read(file, frame, new Warnings());
    assertEquals(4, grid.columns());
    assertEquals(1020, grid.x(0, 0), 0);
    assertEquals(2060, grid.y(0, 0), 0);
    assertArrayEquals(
        new double[] {18, 19, 20, 21, 26, Double.NaN, 28, 29, 34, 35, 36, 37, 42, 43, 44, 45},
        grid.values(),
        0);
  }

  @Test
  void beside_isEmpty() throws IOException {
    Path file =
        new TiffFixture(2, 2, 1, 2, 3, 4)
            .type("uint8")
            .placed(0, 20, 10, 10)
            .crs(32632, true, false)
            .write(dir.resolve("far.tif"));
    GroundFrame frame =
        new GroundFrame("EPSG:32632", new Box(1030, 2030, 1050, 2050), new Box(0, 0, 100, 100), 1);
    assertEquals(0, ClassReader.read(file, frame, new Warnings()).values().length);
  }
}
