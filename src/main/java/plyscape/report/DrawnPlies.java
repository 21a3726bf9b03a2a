package plyscape.report;

import plyscape.plan.Landscape;
import plyscape.render.CellMap;
import plyscape.zones.Zone;

/**
 * The ply that terrain and zones alone would give at each cell of a {@link CellMap} where another
 * one shows, as parts too small or narrow are given to a neighbour; 0 where it is the one that
 * shows. Rims of less than two cells don't count: there, contours and cells differ anyway.
 */
final class DrawnPlies {

  private final Landscape plan;
  private final CellMap map;

  private DrawnPlies(Landscape plan, CellMap map) {
    this.plan = plan;
    this.map = map;
  }

  /** Rows from the north, as the map's. */
  static short[] of(Landscape plan, CellMap map) {
    return new DrawnPlies(plan, map).opened();
  }

  /** Squares of two by two cells that differ in the same way, and nothing else. */
  private short[] opened() {
    int columns = map.columns();
    short[] drawn = differing();
    short[] out = new short[drawn.length];
    for (int row = 0; row + 1 < map.rows(); row++) {
      for (int column = 0; column + 1 < columns; column++) {
        int i = row * columns + column;
        short ply = drawn[i];
        if (ply != 0
            && ply == drawn[i + 1]
            && ply == drawn[i + columns]
            && ply == drawn[i + columns + 1]) {
          out[i] = ply;
          out[i + 1] = ply;
          out[i + columns] = ply;
          out[i + columns + 1] = ply;
        }
      }
    }
    return out;
  }

  private short[] differing() {
    short[] drawn = new short[map.columns() * map.rows()];
    double top = plan.job().panel().heightMm();
    for (int row = 0; row < map.rows(); row++) {
      double y = top - (row + 0.5) * map.cellMm();
      for (int column = 0; column < map.columns(); column++) {
        int shown = map.ply(column, row);
        if (shown > 0) {
          int ply = drawn(column, row, (column + 0.5) * map.cellMm(), y);
          drawn[row * map.columns() + column] = (short) (ply == shown ? 0 : ply);
        }
      }
    }
    return drawn;
  }

  private int drawn(int column, int row, double x, double y) {
    int zone = map.zone(column, row);
    Zone on = zone == 0 ? null : plan.zones().get(zone - 1);
    if (on != null && on.spec().plyNumber() != null) {
      return on.spec().plyNumber();
    }
    int ground = plan.bands().plyAt(plan.terrain().elevationM().bilinear(x, y));
    int last = plan.job().layup().plies().size();
    return on == null ? ground : Math.min(last, ground + on.spec().sink());
  }
}
