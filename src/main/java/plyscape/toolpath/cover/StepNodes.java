package plyscape.toolpath.cover;

import java.util.stream.IntStream;
import plyscape.machine.Tool;
import plyscape.toolpath.depth.DepthPlan;
import plyscape.toolpath.lattice.BlockRange;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Stock;

/** Which lattice nodes a step is to clear, as states for {@link RingCover}. */
public final class StepNodes {

  /** State of each node. */
  public final byte[] state;

  /** Blocks outside which no node is wanted. */
  public final CoarseMap where;

  /** How many nodes are wanted. */
  public final int wanted;

  private final Lattice lattice;
  private final DepthPlan.Step step;
  private final byte[] reached;
  private final double[] depths;
  private final double stepdown;

  /**
   * @param step the step
   * @param field of its level
   * @param reached deepest level that the cutter reaches at each node
   * @param depths of the levels, mm
   * @param cut how deep the nodes are cut so far, mm
   * @param offMm nodes nearer to a wall than this aren't looked at
   */
  public StepNodes(
      DepthPlan.Step step,
      DistanceField field,
      Tool tool,
      byte[] reached,
      double[] depths,
      float[] cut,
      double offMm) {
    this.step = step;
    this.reached = reached;
    this.depths = depths;
    lattice = field.lattice;
    stepdown = tool.stepdownMm() + 1e-6;
    state = new byte[lattice.size()];
    CoarseMap inside = field.range.between(offMm, Double.POSITIVE_INFINITY);
    boolean[] blocks = new boolean[field.range.across() * field.range.up()];
    wanted =
        IntStream.range(0, field.range.up())
            .parallel()
            .map(up -> mark(up, inside, field, cut, (float) offMm, blocks))
            .sum();
    where = new CoarseMap(lattice, BlockRange.BLOCK, blocks);
  }

  /** Marks the nodes in a row of blocks; how many are wanted. */
  private int mark(
      int up, CoarseMap inside, DistanceField field, float[] cut, float off, boolean[] blocks) {
    int across = field.range.across();
    int[] count = {0};
    int end = Math.min(lattice.rows(), (up + 1) * BlockRange.BLOCK);
    for (int j = up * BlockRange.BLOCK; j < end; j++) {
      int base = j * lattice.columns();
      inside.eachRun(
          j,
          (from, last) -> {
            int node = from;
            while (node <= last) {
              int a = (node - base) / BlockRange.BLOCK;
              int until = Math.min(last, base + (a + 1) * BlockRange.BLOCK - 1);
              int here = mark(node, until, cut, field.distance, off);
              count[0] += here;
              blocks[up * across + a] |= here > 0;
              node = until + 1;
            }
          });
    }
    return count[0];
  }

  private int mark(int from, int last, float[] cut, float[] distance, float off) {
    float goal = (float) (step.depthMm() - Stock.SAME_MM);
    boolean full = step.full();
    boolean floor = step.depthMm() >= depths[step.level()] - 1e-9;
    int level = step.level();
    int count = 0;
    for (int node = from; node <= last; node++) {
      if (cut[node] >= goal || distance[node] <= off) {
        continue;
      }
      int k = reached[node];
      state[node] = RingCover.STANDING;
      if (floor && k == level || full && k >= level && depths[k] - cut[node] > stepdown) {
        count++;
        state[node] = atRim(node, level) ? RingCover.WANTED | RingCover.RIM : RingCover.WANTED;
      }
    }
    return count;
  }

  /** Whether a neighbour of a node is beyond what the cutter reaches at a level. */
  private boolean atRim(int node, int least) {
    int columns = lattice.columns();
    for (int at = node - columns; at <= node + columns; at += columns) {
      if (reached[at - 1] < least || reached[at] < least || reached[at + 1] < least) {
        return true;
      }
    }
    return false;
  }
}
