package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.terrain.GroundRaster.Window;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.HeldRaster;
import plyscape.terrain.raster.RasterHead;

/** Reading in strips into blocks against means worked out cell by cell. */
class BlockMeansTest {

  @Test
  void blocks_areTheMeansOfTheirCells() throws IOException {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      int columns = 5 + random.nextInt(60);
      int rows = 5 + random.nextInt(200);
      double[] values =
          random.doubles((long) columns * rows, 0, 100).map(v -> v < 20 ? Double.NaN : v).toArray();
      boolean southUp = random.nextBoolean();
      Affine place = southUp ? new Affine(0, 1, 0, 0, 0, 1) : Affine.northUp(0, rows, 1, 1);
      HeldRaster raster =
          new HeldRaster(
              new RasterHead("t", columns, rows, place, RasterHead.Origin.FILE, GroundCrs.NONE),
              values);
      GroundRaster ground = new AlignedRaster(raster, raster.crs());
      Window w = new Window(random.nextInt(3), random.nextInt(3), columns - 3, rows - 3);
      int across = 1 + random.nextInt(4);
      int along = 1 + random.nextInt(4);
      Box crop =
          new Box(
              w.column() + 0.4,
              w.row() + 0.4,
              w.column() + w.columns() - 0.6,
              w.row() + w.rows() - 0.4);
      CropWindow core = CropWindow.centresIn(crop, ground.frame(), w);
      BlockMeans got = BlockMeans.read(ground, w, across, along, core);
      double max = Double.NEGATIVE_INFINITY;
      int voids = 0;
      for (int block = 0; block < got.values().length; block++) {
        double sum = 0;
        int count = 0;
        int cells = 0;
        for (int row = block / got.columns() * along;
            row < Math.min(w.rows(), (block / got.columns() + 1) * along);
            row++) {
          for (int c = block % got.columns() * across;
              c < Math.min(w.columns(), (block % got.columns() + 1) * across);
              c++) {
            int fileRow = southUp ? w.row() + row : rows - 1 - w.row() - row;
            double value = values[fileRow * columns + w.column() + c];
            cells++;
            sum += Double.isNaN(value) ? 0 : value;
            count += Double.isNaN(value) ? 0 : 1;
            // The last column's centre lies outside the crop.
            if (c < w.columns() - 1) {
              max = Double.isNaN(value) ? max : Math.max(max, value);
              voids += Double.isNaN(value) ? 1 : 0;
            }
          }
        }
        double want =
            across * along > 1 && 2 * count < cells || count == 0 ? Double.NaN : sum / count;
        assertEquals(want, got.values()[block], 1e-9, "seed " + seed + ", block " + block);
      }
      assertEquals(max, got.range().max(), 0, "seed " + seed);
      assertEquals(voids, got.range().voids(), "seed " + seed);
    }
  }
}
