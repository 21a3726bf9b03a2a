package plyscape.toolpath.cover;

import java.util.Arrays;
import java.util.List;
import plyscape.toolpath.depth.RestTally;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.slot.SlotPlaces;
import plyscape.toolpath.slot.SlotWay;

/**
 * How deep one cutter can go at each lattice node: the deepest level in whose pocket its disk can
 * cover the node (the opening of P_k by the disk). As pockets nest, so do openings. Levels are
 * given by their position in the planner's list, upper first.
 */
public final class Reach {

  private final List<LevelField> fields;
  private final List<List<Ring>> walls;
  private final List<SlotPlaces> slots;
  private final double[] depths;
  private final Lattice lattice;
  private final byte[] level;
  private final ThinParts thin;

  /**
   * @param fields levels, upper first
   * @param walls this cutter's exact wall rings of each
   * @param slots its narrow places in each
   * @param deepest number of levels that its flutes are long enough for
   * @param thin what nodes don't show of the levels
   */
  public Reach(
      List<LevelField> fields,
      List<List<Ring>> walls,
      List<SlotPlaces> slots,
      double radiusMm,
      int deepest,
      ThinParts thin) {
    this.fields = fields;
    this.walls = walls;
    this.slots = slots;
    this.thin = thin;
    lattice = fields.get(0).field().lattice;
    depths = fields.stream().mapToDouble(field -> field.level().depthMm()).toArray();
    level = new byte[lattice.size()];
    Arrays.fill(level, (byte) -1);
    Sweep sweep = new Sweep(lattice);
    for (int k = 0; k < deepest; k++) {
      byte mark = (byte) k;
      DistanceField field = field(k);
      field
          .range
          .between(radiusMm - 1e-6, Double.POSITIVE_INFINITY)
          .eachRun((first, last) -> inside(field, radiusMm, first, last, mark));
      for (Ring ring : walls.get(k)) {
        under(ring, sweep, radiusMm, mark);
      }
      for (SlotWay slot : slots.get(k).ways()) {
        under(slot.side(true), sweep, radiusMm, mark);
        under(slot.side(false), sweep, radiusMm, mark);
      }
    }
  }

  private void inside(DistanceField field, double radiusMm, int first, int last, byte mark) {
    for (int node = first; node <= last; node++) {
      if (field.distance[node] >= radiusMm) {
        level[node] = mark;
      }
    }
  }

  private void under(Ring ring, Sweep sweep, double radiusMm, byte mark) {
    int n = ring.size();
    Sweep.Run run = (first, last) -> Arrays.fill(level, first, last + 1, mark);
    sweep.all(ring.x()[0], ring.y()[0], ring.x()[0], ring.y()[0], radiusMm, run);
    for (int i = 1; i < n + (ring.closed() ? 1 : 0); i++) {
      int at = i % n;
      sweep.fresh(ring.x()[i - 1], ring.y()[i - 1], ring.x()[at], ring.y()[at], radiusMm, run);
    }
  }

  /** Deepest level reached at a node, or -1 where not even the shallowest is. */
  int levelAt(int node) {
    return level[node];
  }

  /** Distances in a level's pocket. */
  public DistanceField field(int k) {
    return fields.get(k).field();
  }

  /** Depth of a level, mm. */
  public double depthMm(int k) {
    return depths[k];
  }

  /** Depths of all levels, mm. */
  public double[] depthsMm() {
    return depths.clone();
  }

  /** This cutter's exact wall rings in a level. */
  public List<Ring> walls(int k) {
    return walls.get(k);
  }

  /** This cutter's narrow places in a level. */
  public SlotPlaces slots(int k) {
    return slots.get(k);
  }

  /**
   * Whether a level is the deepest that is reached at a node, and wood stands over its depth, there
   * or unseen beside it.
   */
  public boolean stands(int node, int k, PlannedFloor floor) {
    return level[node] == k && floor.depthAt(node) < depths[k] - Stock.SAME_MM
        || level[node] > k && floor.thin().at(node, k);
  }

  /** Area in which each level is the deepest that is reached, and about that of thin parts, mm2. */
  public double[] areasMm2() {
    int[] counts = new int[depths.length];
    for (byte k : level) {
      if (k >= 0) {
        counts[k]++;
      }
    }
    for (int k = 0; k < depths.length; k++) {
      int at = k;
      counts[k] += (int) thin.nodes(k).filter(node -> level[node] > at).count();
    }
    return Arrays.stream(counts).mapToDouble(count -> count * lattice.nodeAreaMm2()).toArray();
  }

  /**
   * What stands over the depths that are reached.
   *
   * @param offMm nodes nearer to a wall than this aren't counted
   */
  public RestTally rest(PlannedFloor floor, double offMm) {
    RestTally rest = new RestTally();
    for (int node = 0; node < level.length; node++) {
      int k = level[node];
      if (k >= 0
          && floor.depthAt(node) < depths[k] - Stock.SAME_MM
          && field(k).distance[node] > offMm) {
        rest.add(floor.depthAt(node), k);
      }
    }
    return rest;
  }
}
