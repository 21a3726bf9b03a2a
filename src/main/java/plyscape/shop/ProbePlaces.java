package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import plyscape.grid.Box;
import plyscape.layup.PanelPoint;

/**
 * Places at which a panel's top face is to be probed: all the nodes of a rectangular grid over the
 * carved area, its edges included, in the order of touching: row by row from the lower left, every
 * other row backwards. Immutable.
 *
 * @param columns in X, two or more
 * @param rows in Y, two or more
 * @param places numbered from 1 in the order of the list
 */
public record ProbePlaces(int columns, int rows, List<PanelPoint> places) {

  /** Places on the panel are given to this, mm. */
  private static final double PLACES = 1000;

  /** Lays a grid over an area. */
  public static ProbePlaces over(Box carved, int columns, int rows) {
    List<PanelPoint> places = new ArrayList<>();
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        int column = r % 2 == 0 ? c : columns - 1 - c;
        places.add(
            new PanelPoint(
                rounded(carved.minX() + carved.width() * column / (columns - 1)),
                rounded(carved.minY() + carved.height() * r / (rows - 1))));
      }
    }
    return new ProbePlaces(columns, rows, List.copyOf(places));
  }

  private static double rounded(double mm) {
    return Math.rint(mm * PLACES) / PLACES;
  }
}
