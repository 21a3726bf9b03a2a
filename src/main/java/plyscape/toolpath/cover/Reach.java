package plyscape.toolpath.cover;

import java.util.Arrays;
import java.util.List;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.LevelField;

/**
 * How deep one cutter can go at each lattice node: the deepest level in whose pocket its disk can
 * cover the node (the opening of P_k by the disk). As pockets nest, so do openings.
 */
public final class Reach {

  /**
   * Position of the level in the planner's list, or -1 where not even the shallowest can be
   * reached.
   */
  public final byte[] level;

  /** Wall rings of each level, by position. */
  public final List<List<Ring>> walls;

  /**
   * @param fields levels, upper first
   * @param walls this cutter's exact wall rings of each
   * @param deepest number of levels that its flutes are long enough for
   */
  public Reach(
      List<LevelField> fields,
      List<List<Ring>> walls,
      double radiusMm,
      int deepest,
      Lattice lattice) {
    this.walls = walls;
    level = new byte[lattice.size()];
    Arrays.fill(level, (byte) -1);
    Sweep sweep = new Sweep(lattice);
    for (int k = 0; k < deepest; k++) {
      byte mark = (byte) k;
      DistanceField field = fields.get(k).field();
      field
          .range
          .between(radiusMm - 1e-6, Double.POSITIVE_INFINITY)
          .eachRun(
              (first, last) -> {
                for (int node = first; node <= last; node++) {
                  if (field.distance[node] >= radiusMm) {
                    level[node] = mark;
                  }
                }
              });
      for (Ring ring : walls.get(k)) {
        int n = ring.size();
        Sweep.Run run = (first, last) -> Arrays.fill(level, first, last + 1, mark);
        sweep.all(ring.x()[0], ring.y()[0], ring.x()[0], ring.y()[0], radiusMm, run);
        for (int i = 1; i < n + (ring.closed() ? 1 : 0); i++) {
          int at = i % n;
          sweep.fresh(ring.x()[i - 1], ring.y()[i - 1], ring.x()[at], ring.y()[at], radiusMm, run);
        }
      }
    }
  }
}
