package plyscape.toolpath.cover;

import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;

/**
 * Where along the walls of a pocket the cutters that have run left wood, found from the walls
 * themselves: exact, where the lattice can't see a rest of a few hundredths.
 */
public final class WallRest implements WallNeed {

  /**
   * Wood thinner than this along a wall needn't be taken off by a smaller cutter, mm
   * (src/contract.md, section 9: 0.05).
   */
  private static final double WALL_REST_MM = 0.03;

  /** Directions off the wall's normal in which a larger cutter's place is sought, to each side. */
  private static final int TURNS = 20;

  private static final double TURN = Math.toRadians(3);

  private final DistanceField field;
  private final Lattice lattice;
  private final double[] before;
  private final PlannedFloor floor;

  /**
   * @param field of the pocket
   * @param before radii of the cutters that have run, mm
   * @param floor as they left it
   */
  public WallRest(DistanceField field, double[] before, PlannedFloor floor) {
    this.field = field;
    this.before = before;
    this.floor = floor;
    lattice = field.lattice;
  }

  /**
   * Whether none of the larger cutters could come near enough to the wall where this one touches it
   * from (x, y): wherever around that point its disk is laid, it would reach over a wall elsewhere.
   */
  @Override
  public boolean at(double x, double y) {
    if (before.length == 0) {
      return false;
    }
    int edge = field.nearest[lattice.nearest(x, y)];
    if (edge < 0) {
      return false;
    }
    double t = field.edges.along(edge, x, y);
    double wallX = field.edges.ax[edge] + t * (field.edges.bx[edge] - field.edges.ax[edge]);
    double wallY = field.edges.ay[edge] + t * (field.edges.by[edge] - field.edges.ay[edge]);
    double length = Math.hypot(x - wallX, y - wallY);
    if (length < 1e-6) {
      return false;
    }
    if (floor.leftToSmallerNear(wallX, wallY)) {
      return true;
    }
    double nx = (x - wallX) / length;
    double ny = (y - wallY) / length;
    for (double larger : before) {
      for (int turn = 0; turn <= TURNS; turn++) {
        double cos = (larger + WALL_REST_MM) * Math.cos(turn * TURN);
        double sin = (larger + WALL_REST_MM) * Math.sin(turn * TURN);
        if (field.at(wallX + nx * cos - ny * sin, wallY + ny * cos + nx * sin) >= larger
            || field.at(wallX + nx * cos + ny * sin, wallY + ny * cos - nx * sin) >= larger) {
          return false;
        }
      }
    }
    return true;
  }
}
