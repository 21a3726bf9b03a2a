package plyscape.zones;

import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.ClassGrid;
import plyscape.planar.Chain;
import plyscape.planar.ChainSmoother;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;
import plyscape.planar.PolygonAssembler;
import plyscape.zones.map.MapShapes;

/**
 * Smooth borders between the classes of a coarse raster: its cells would show as steps on the
 * panel. The borders of all classes are smoothed together, each once, so that two zones of one
 * raster share theirs and leave no gap; areas stay within 0.5 % of the cells' for whatever is
 * larger than some hundred cells.
 */
final class ClassBorders {

  /** Units along a side of a cell: fine enough for a smooth line. */
  private static final int CELL_UNITS = 1000;

  private final PlanarMap map;
  private final List<Chain> chains;

  /** Classes by number from 1; values that aren't there are class 1. */
  private final TreeMap<Double, Integer> numbers = new TreeMap<>();

  ClassBorders(ClassGrid grid) {
    numbers.put(Double.NaN, 1);
    for (double value : grid.values()) {
      double key = value + 0.0; // no minus zero
      if (!numbers.containsKey(key)) {
        numbers.put(key, numbers.size() + 1);
      }
    }
    map = PlanarMap.of(sides(grid));
    chains = ChainSmoother.smooth(map.chains(), CELL_UNITS);
  }

  /** All sides between cells of different classes; what crosses one from right to left adds up. */
  private Linework sides(ClassGrid grid) {
    Linework lines = new Linework(1);
    int columns = grid.columns();
    int rows = grid.rows();
    for (int row = 0; row <= rows; row++) {
      for (int column = 0; column <= columns; column++) {
        int here = number(grid, column, row);
        int west = number(grid, column - 1, row);
        int below = number(grid, column, row - 1);
        if (here != west) {
          // Towards larger rows: smaller columns are to its left.
          side(lines, column, row, column, row + 1, west - here);
        }
        if (here != below) {
          side(lines, column, row, column + 1, row, here - below);
        }
      }
    }
    return lines;
  }

  private static void side(Linework lines, int x0, int y0, int x1, int y1, int weight) {
    lines.add(
        new int[] {x0 * CELL_UNITS, x1 * CELL_UNITS},
        new int[] {y0 * CELL_UNITS, y1 * CELL_UNITS},
        0,
        weight,
        false);
  }

  private int number(ClassGrid grid, int column, int row) {
    boolean inside = column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows();
    return inside ? numbers.get(grid.values()[row * grid.columns() + column] + 0.0) : 0;
  }

  /** Where one of some values is, in raster positions. */
  List<Polygon> polygons(Set<Double> wanted) {
    return new PolygonAssembler(chains, map.faces(), CELL_UNITS, MapShapes.FACTORY)
        .polygons(f -> wanted(wanted, map.winding(f, 0))).stream()
            .map(PolygonAssembler.Part::polygon)
            .toList();
  }

  private boolean wanted(Set<Double> wanted, int number) {
    return wanted.stream().anyMatch(v -> numbers.getOrDefault(v + 0.0, 0) == number && number > 0);
  }
}
