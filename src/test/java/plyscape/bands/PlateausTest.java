package plyscape.bands;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.terrain.RasterSource;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;

/** Relief of 100 m, so that elevations within 1e-7 m are the same. */
class PlateausTest {

  private static Terrain terrain(double... values) {
    Box box = new Box(0, 0, values.length, 1);
    Grid grid = new Grid(new CellFrame(0, 0, 1, 1, values.length, 1), values);
    return new Terrain(
        new RasterSource("t.asc", "", 1),
        new GroundFrame("", box, box, 1),
        grid,
        new Terrain.Range(0, 100),
        VoidCells.NONE,
        null);
  }

  @Test
  void elevationsUnderABreakByRounding_areOnIt() {
    Terrain terrain = terrain(0, 50 - 1e-8, 50 - 1e-6, 50, 100);
    Bands bands = new Bands(List.of(1, 2), List.of(50.0));
    assertArrayEquals(
        new double[] {0, 50, 50 - 1e-6, 50, 100},
        Plateaus.onBreaks(terrain, bands).elevationM().values(),
        0);
  }

  @Test
  void groundWithoutSuchElevations_staysTheSame() {
    Terrain terrain = terrain(0, 49, 100);
    assertSame(terrain, Plateaus.onBreaks(terrain, new Bands(List.of(1, 2), List.of(50.0))));
  }

  @Test
  void runs_areLevelledToTheirLowest_andNotBeyondTheTolerance() {
    double[] rising = {1, 1 + 4e-8, 1 + 9e-8, 1 + 13e-8, 2};
    Plateaus.level(rising, 1e-7);
    assertArrayEquals(new double[] {1, 1, 1, 1 + 13e-8, 2}, rising, 0);
  }

  /** A lake of 5 of 9 cells, its level off by rounding as smoothing leaves it: never torn apart. */
  @Test
  void equalArea_keepsALakeWhole() {
    double[] cells = new double[9];
    for (int i = 0; i < 9; i++) {
      cells[i] = i < 5 ? 30 + i * 1e-14 : i == 8 ? 100 : i == 7 ? 0 : 40 + i;
    }
    double[] rising = CarvedCells.of(terrain(cells), 0);
    for (double breakM : QuantileBreaks.breaks(rising, 4)) {
      int above = 0;
      for (int i = 0; i < 5; i++) {
        above += cells[i] >= breakM - 1e-7 ? 1 : 0;
      }
      assertEquals(0, above % 5, "break at " + breakM);
    }
  }
}
