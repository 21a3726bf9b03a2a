package plyscape.toolpath.cover;

import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;

/**
 * Where along the walls of a pocket wood is left, found from the ways of the cutters that have run
 * and the walls themselves: exact, where the lattice can't see a rest of a few hundredths.
 */
public final class WallRest implements WallNeed {

  /**
   * Wood thinner than this along a wall needn't be taken off by a smaller cutter, mm
   * (src/contract.md, section 9: 0.05).
   */
  private static final double WALL_REST_MM = 0.03;

  private final DistanceField field;
  private final Lattice lattice;
  private final double depthMm;
  private final CutPaths paths;

  /**
   * @param field of the pocket
   * @param depthMm how deep it is to be cut
   * @param floor as it is left so far
   */
  public WallRest(DistanceField field, double depthMm, PlannedFloor floor) {
    this.field = field;
    this.depthMm = depthMm;
    paths = floor.paths();
    lattice = field.lattice;
  }

  /**
   * Whether no cutter has come near enough to the wall where this one touches it from (x, y), at
   * this depth or deeper.
   */
  @Override
  public boolean at(double x, double y) {
    int near = field.nearest[lattice.nearest(x, y)];
    if (near < 0) {
      return false;
    }
    int edge = field.edges.nearestAlong(near, x, y);
    double t = field.edges.along(edge, x, y);
    double wallX = field.edges.ax[edge] + t * (field.edges.bx[edge] - field.edges.ax[edge]);
    double wallY = field.edges.ay[edge] + t * (field.edges.by[edge] - field.edges.ay[edge]);
    return !paths.reach(wallX, wallY, WALL_REST_MM, depthMm);
  }
}
