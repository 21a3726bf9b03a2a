package plyscape.toolpath.cover;

/** Whether the wall at a point of the wall ring needs a cutter, whatever the lattice says. */
public interface WallNeed {

  /** Nowhere: the lattice alone decides. */
  WallNeed NONE = (x, y) -> false;

  /** At a place of the cutter's centre, mm. */
  boolean at(double x, double y);
}
