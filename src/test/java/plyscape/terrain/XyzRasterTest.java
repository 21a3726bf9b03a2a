package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.terrain.raster.Raster;

/** The ground as lines of points in no order; where there is a void, there is no point. */
class XyzRasterTest extends RasterTestBase {

  @Override
  Path write(Path dir) throws IOException {
    return write(dir, "points.xyz", " ", "");
  }

  private static Path write(Path dir, String name, String separator, String heading)
      throws IOException {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < GROUND.length; i++) {
      if (!Double.isNaN(GROUND[i])) {
        double x = 500_000 + 25 * (i % COLUMNS);
        double y = 6_000_000 - 25 * (i / COLUMNS);
        lines.add(
            String.format(Locale.ROOT, "%.1f%s%.1f%s%.2f", x, separator, y, separator, GROUND[i]));
      }
    }
    Collections.shuffle(lines, new Random(3));
    return Files.writeString(dir.resolve(name), heading + String.join("\n", lines) + "\n");
  }

  @Override
  double[] westNorthCell() {
    return new double[] {499_987.5, 6_000_012.5, 25};
  }

  /** Half a file of points in no order is a smaller ground, unless a line itself is broken. */
  @Override
  @Test
  void brokenOff_isAnInputFaultThatNamesTheFile() throws IOException {
    String whole = Files.readString(write(dir));
    int lastLine = whole.lastIndexOf('\n', whole.length() - 2);
    Path half = Files.writeString(dir.resolve("half.xyz"), whole.substring(0, lastLine + 12));
    InputFault fault = assertThrows(InputFault.class, () -> Rasters.open(half, new Warnings()));
    assertEquals(half.toString(), fault.place().file());
    assertEquals(11, fault.place().line());
  }

  @Test
  void commasSemicolonsTabsHeadingsAndMoreColumns_areRead() throws IOException {
    for (String separator : new String[] {",", ";", "\t", " , "}) {
      Path file = write(dir, "some.txt", separator, "X;Y;Z\r\n# points\n");
      Files.writeString(file, Files.readString(file).replace("\n5", " 7 8\n5"));
      try (Raster raster = Rasters.open(file, new Warnings())) {
        assertArrayEquals(GROUND, raster.read(0, 0, COLUMNS, ROWS), 0, separator);
      }
    }
  }

  /**
   * Degrees with six decimals: an arc-second is 277.78 of the last, so places are up to 0.2 % off.
   */
  @Test
  void roundedCoordinates_areAGridStill() throws IOException {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < 900; i++) {
      out.append(
          String.format(
              Locale.ROOT, "%.6f %.6f %d%n", 7 + i % 30 / 3600.0, 46 + i / 30 / 3600.0, i));
    }
    Path file = Files.writeString(dir.resolve("degrees.xyz"), out);
    try (Raster raster = Rasters.open(file, new Warnings())) {
      assertEquals(30, raster.columns());
      assertEquals(30, raster.rows());
      assertEquals(870, raster.read(0, 0, 1, 1)[0], 0);
    }
  }

  @Test
  void whatIsNoGrid_isAFault() throws IOException {
    assertFault("0 0 1\n1 0 2\n2.3 0 3\n", "don't lie on a grid");
    assertFault("0 0 1\n10 0 2\n0 0 3\n10 10 1\n", "two points at 0.0, 0.0");
    assertFault("0 0 1\n1 0\n2 0 3\n", "without three numbers");
    assertFault("5 5 1\n", "a single point");
    Random random = new Random(1);
    StringBuilder cloud = new StringBuilder();
    for (int i = 0; i < 1000; i++) {
      cloud
          .append(random.nextInt(100_000))
          .append(' ')
          .append(random.nextInt(100_000))
          .append(" 1\n");
    }
    assertFault(cloud.toString(), "don't lie on a grid");
  }

  private void assertFault(String text, String said) throws IOException {
    Path file = Files.writeString(dir.resolve("no-grid.xyz"), text);
    InputFault fault = assertThrows(InputFault.class, () -> Rasters.open(file, new Warnings()));
    assertTrue(fault.getMessage().contains(said), fault.getMessage());
    assertTrue(fault.getMessage().contains("no-grid.xyz"), fault.getMessage());
  }
}
