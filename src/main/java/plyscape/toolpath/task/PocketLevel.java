package plyscape.toolpath.task;

import org.locationtech.jts.geom.MultiPolygon;

/**
 * One ply's pocket to be cut. Immutable.
 *
 * @param plyNumber the ply
 * @param depthMm target depth as it is written, positive down
 * @param pocket P_k in panel mm
 * @param exposed where the ply shows, in panel mm; empty when nothing of it does
 * @param grainDegrees direction of the ply's grain, from X counterclockwise
 */
public record PocketLevel(
    int plyNumber, double depthMm, MultiPolygon pocket, MultiPolygon exposed, double grainDegrees) {

  /** Depths are written in thousandths of a mm. */
  private static final double WRITTEN = 1000;

  /** The depth that is cut for a target depth, mm: none grows by being rounded later. */
  public static double asWritten(double depthMm) {
    return Math.round(depthMm * WRITTEN) / WRITTEN;
  }

  /** The same of a ply with its grain along X. */
  public PocketLevel(int plyNumber, double depthMm, MultiPolygon pocket, MultiPolygon exposed) {
    this(plyNumber, depthMm, pocket, exposed, 0);
  }
}
