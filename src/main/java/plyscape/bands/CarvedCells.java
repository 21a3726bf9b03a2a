package plyscape.bands;

import java.util.Arrays;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.terrain.Terrain;

/**
 * The elevations of the cells that count and whose centres lie in the carved area, from a least one
 * up, rising.
 */
public final class CarvedCells {

  private CarvedCells() {}

  /**
   * Sorted copy; all cells stand for the same area. Elevations that are one but for rounding are
   * equal in it.
   */
  public static double[] of(Terrain terrain, double leastM) {
    CellFrame cells = terrain.elevationM().frame();
    Box carved = terrain.frame().panel();
    double[] out = new double[cells.size()];
    int n = 0;
    for (int row = 0; row < cells.rows(); row++) {
      for (int column = 0; column < cells.columns(); column++) {
        double elevation = terrain.elevationM().at(column, row);
        boolean counts = elevation >= leastM && terrain.counts(column, row);
        if (counts && carved.contains(cells.centreX(column), cells.centreY(row))) {
          out[n++] = elevation;
        }
      }
    }
    out = Arrays.copyOf(out, n);
    Arrays.sort(out);
    Plateaus.level(out, Plateaus.toleranceM(terrain));
    return out;
  }
}
