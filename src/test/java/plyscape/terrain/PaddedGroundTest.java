package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.io.IOException;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.terrain.GroundRaster.Window;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.HeldRaster;
import plyscape.terrain.raster.RasterHead;

class PaddedGroundTest {

  private static AlignedRaster raster(int columns, int rows) {
    double[] values = new double[columns * rows];
    for (int i = 0; i < values.length; i++) {
      values[i] = i;
    }
    return new AlignedRaster(
        new HeldRaster(
            new RasterHead(
                "t",
                columns,
                rows,
                Affine.northUp(100, 200 + 10.0 * rows, 10, 10),
                RasterHead.Origin.FILE,
                GroundCrs.NONE),
            values),
        new HeldRaster(
                new RasterHead(
                    "t",
                    columns,
                    rows,
                    Affine.northUp(100, 200 + 10.0 * rows, 10, 10),
                    RasterHead.Origin.FILE,
                    GroundCrs.NONE),
                values)
            .crs());
  }

  @Test
  void cropWithin_leavesTheRaster() {
    AlignedRaster inner = raster(5, 4);
    assertSame(inner, PaddedGround.around(inner, new Box(100, 200, 150, 240)));
  }

  /** Cells keep their ground, strips tile every window, and what lies beyond is void. */
  @Test
  void cells_keepTheirPlace() throws IOException {
    for (int seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      AlignedRaster inner = raster(3 + random.nextInt(5), 3 + random.nextInt(150));
      Box box = inner.frame().box();
      Box crop =
          new Box(
              box.minX() - random.nextInt(60) + 5,
              box.minY() - random.nextInt(60) + 5,
              box.maxX() + random.nextInt(60) - 5,
              box.maxY() + random.nextInt(60) - 5);
      GroundRaster padded = PaddedGround.around(inner, crop);
      Window w =
          new Window(
              random.nextInt(padded.frame().columns()),
              random.nextInt(padded.frame().rows()),
              1,
              1);
      w =
          new Window(
              w.column(),
              w.row(),
              1 + random.nextInt(padded.frame().columns() - w.column()),
              1 + random.nextInt(padded.frame().rows() - w.row()));
      int next = w.row();
      for (Window strip : padded.strips(w)) {
        assertEquals(next, strip.row(), "seed " + seed);
        assertEquals(w.columns(), strip.columns());
        next += strip.rows();
        double[] got = padded.read(strip);
        for (int i = 0; i < got.length; i++) {
          double x = padded.frame().centreX(strip.column() + i % strip.columns());
          double y = padded.frame().centreY(strip.row() + i / strip.columns());
          boolean known = box.contains(x, y);
          double want =
              known
                  ? inner
                      .read(
                          new Window(
                              (int) ((x - box.minX()) / 10), (int) ((y - box.minY()) / 10), 1, 1))[
                      0]
                  : Double.NaN;
          assertEquals(want, got[i], 0, "seed " + seed + " at " + x + ", " + y);
        }
      }
      assertEquals(w.row() + w.rows(), next, "seed " + seed);
    }
  }
}
