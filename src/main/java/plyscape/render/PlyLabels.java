package plyscape.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import plyscape.grid.DistanceTransform;
import plyscape.plan.Landscape;

/**
 * Places for ply numbers on the panel: the widest places of each ply, none near another. Exact to
 * about a cell of the map.
 */
public final class PlyLabels {

  private static final int LONGEST_CELLS = 320;

  /** Numbers of one ply at most. */
  private static final int EACH = 8;

  /** Two numbers of a ply stand at least so many of the larger one's radii apart. */
  private static final double APART = 3.5;

  private PlyLabels() {}

  /** A number's middle and the radius around it that is free, panel mm. */
  public record Label(int plyNumber, double x, double y, double radiusMm) {}

  /** Labels in ply order; only where a circle of the given radius has room. */
  public static List<Label> of(Landscape plan, double leastRadiusMm) {
    CellMap map = CellMap.of(plan, LONGEST_CELLS);
    double height = plan.job().panel().heightMm();
    int[] squared = DistanceTransform.squared(edges(map), map.columns(), map.rows());
    List<Label> free = new ArrayList<>();
    for (int row = 0; row < map.rows(); row++) {
      for (int column = 0; column < map.columns(); column++) {
        double radius = (Math.sqrt(squared[row * map.columns() + column]) - 1) * map.cellMm();
        if (map.ply(column, row) > 0
            && radius >= leastRadiusMm
            && widest(squared, map, column, row)) {
          free.add(
              new Label(
                  map.ply(column, row),
                  (column + 0.5) * map.cellMm(),
                  height - (row + 0.5) * map.cellMm(),
                  radius));
        }
      }
    }
    // The sort is stable, so that equals stay in reading order.
    free.sort(Comparator.comparingDouble((Label label) -> -label.radiusMm()));
    List<Label> chosen = new ArrayList<>();
    for (Label label : free) {
      long ofPly = chosen.stream().filter(c -> c.plyNumber() == label.plyNumber()).count();
      if (ofPly < EACH && chosen.stream().allMatch(c -> apart(c, label))) {
        chosen.add(label);
      }
    }
    chosen.sort(Comparator.comparingInt(Label::plyNumber));
    return List.copyOf(chosen);
  }

  /**
   * Whether none of the eight cells around has more room; a cell with room isn't one of the
   * outermost.
   */
  private static boolean widest(int[] squared, CellMap map, int column, int row) {
    int here = row * map.columns() + column;
    for (int step = -1; step <= 1; step++) {
      int above = here - map.columns() + step;
      int below = here + map.columns() + step;
      if (squared[above] > squared[here]
          || squared[below] > squared[here]
          || squared[here + step] > squared[here]) {
        return false;
      }
    }
    return true;
  }

  private static boolean apart(Label placed, Label next) {
    return placed.plyNumber() != next.plyNumber()
        || Math.hypot(placed.x() - next.x(), placed.y() - next.y()) > APART * placed.radiusMm();
  }

  /** Cells with another ply to the west or north, and the outermost ones. */
  private static boolean[] edges(CellMap map) {
    boolean[] edge = new boolean[map.columns() * map.rows()];
    for (int row = 0; row < map.rows(); row++) {
      for (int column = 0; column < map.columns(); column++) {
        int ply = map.ply(column, row);
        edge[row * map.columns() + column] =
            row == 0
                || column == 0
                || row == map.rows() - 1
                || column == map.columns() - 1
                || map.ply(column - 1, row) != ply
                || map.ply(column, row - 1) != ply;
      }
    }
    return edge;
  }
}
