package plyscape.toolpath.task;

import org.locationtech.jts.geom.MultiPolygon;

/**
 * One ply's pocket to be cut. Immutable.
 *
 * @param plyNumber the ply
 * @param depthMm target depth, positive down
 * @param pocket P_k in panel mm
 * @param exposed where the ply shows, in panel mm; empty when nothing of it does
 * @param grainDegrees direction of the ply's grain, from X counterclockwise
 */
public record PocketLevel(
    int plyNumber, double depthMm, MultiPolygon pocket, MultiPolygon exposed, double grainDegrees) {

  /** The same of a ply with its grain along X. */
  public PocketLevel(int plyNumber, double depthMm, MultiPolygon pocket, MultiPolygon exposed) {
    this(plyNumber, depthMm, pocket, exposed, 0);
  }
}
