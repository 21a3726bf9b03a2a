package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.fault.Place;
import plyscape.grid.CellFrame;
import plyscape.terrain.GroundRaster.Window;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.PlaneMap;
import plyscape.terrain.raster.Affine;

/** Positions through quadrics against the projection itself, cell by cell. */
class CellPositionsTest {

  private static final PlaneMap TO_DEGREES =
      CrsLookup.between("EPSG:32633", "EPSG:4326", Place.file(""));

  private static double worst(CellFrame frame, PlaneMap map, Affine toCell, Window w) {
    double[] got = new CellPositions(frame, map, toCell).of(w);
    double worst = 0;
    for (int i = 0; i < got.length / 2; i++) {
      double[] xy = {
        frame.centreX(w.column() + i % w.columns()), frame.centreY(w.row() + i / w.columns())
      };
      map.map(xy, 1);
      double dx = Math.abs(toCell.x(xy[0], xy[1]) - got[2 * i]);
      double dy = Math.abs(toCell.y(xy[0], xy[1]) - got[2 * i + 1]);
      assertEquals(Double.isNaN(xy[0]), Double.isNaN(got[2 * i]));
      worst = Double.isNaN(xy[0]) ? worst : Math.max(worst, Math.max(dx, dy));
    }
    return worst;
  }

  /** From 1 to 100 arc-seconds, up to 70 N, odd windows: as near as the class says. */
  @Test
  void positions_areTheProjections() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      double degrees = 1 / 3600.0 * Math.pow(10, random.nextInt(3));
      double cellM = degrees * 80_000;
      double minX = 300_000 + random.nextInt(400_000);
      double minY = random.nextInt(7_700_000);
      int n = (int) Math.min(300, 500_000 / cellM);
      CellFrame frame = new CellFrame(minX, minY, cellM, cellM, n, n);
      Affine toCell = Affine.northUp(5, 80, degrees, degrees).inverse();
      int column = random.nextInt(n / 2);
      int row = random.nextInt(n / 2);
      Window w =
          new Window(column, row, 1 + random.nextInt(n - column), 1 + random.nextInt(n - row));
      double worst = worst(frame, TO_DEGREES, toCell, w);
      assertTrue(worst < 1e-3, "seed " + seed + ": " + worst);
      assertTrue(cellM > 30 || worst < 1e-6, "seed " + seed + ": " + worst);
    }
  }

  @Test
  void position_doesntDependOnTheWindow() {
    CellFrame frame = new CellFrame(500_000, 5_200_000, 30, 30, 200, 200);
    CellPositions positions =
        new CellPositions(frame, TO_DEGREES, Affine.northUp(14, 48, 3e-4, 3e-4).inverse());
    double[] all = positions.of(new Window(0, 0, 200, 200));
    double[] some = positions.of(new Window(37, 61, 50, 40));
    for (int i = 0; i < some.length; i++) {
      int cell = i / 2;
      int at = 2 * ((61 + cell / 50) * 200 + 37 + cell % 50) + i % 2;
      assertEquals(all[at], some[i], 0);
    }
  }

  /** A kink, and a place beyond the projection: cell by cell, exactly. */
  @Test
  void roughBlocks_areMappedOneByOne() {
    PlaneMap kinked =
        (xy, count) -> {
          for (int i = 0; i < 2 * count; i += 2) {
            xy[i + 1] += xy[i] > 50 ? xy[i] - 50 : 0;
            xy[i] = xy[i] < 10 ? Double.NaN : xy[i];
          }
        };
    CellFrame frame = new CellFrame(0, 0, 1, 1, 100, 100);
    Affine same = Affine.northUp(0, 100, 1, 1);
    assertEquals(0, worst(frame, kinked, same, new Window(0, 0, 100, 100)), 1e-9);
  }
}
