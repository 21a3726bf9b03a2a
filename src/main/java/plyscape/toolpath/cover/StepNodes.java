package plyscape.toolpath.cover;

import java.util.Arrays;
import java.util.stream.IntStream;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.lattice.BlockRange;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Stock;

/**
 * What a step still has to do with each lattice node: nothing, leave it standing, or clear it. Runs
 * of nodes are neighbours in a row, both ends included.
 *
 * <p>A wanted node can also be <em>at the rim</em> of what the cutter reaches, where the cutter may
 * touch it with its very edge; <em>small</em>, part of a small patch, which the wall ring alone
 * takes what it can of, in one cut at less feed; or <em>left</em> by the ordinary rings, so that
 * the ones between are for it.
 */
public final class StepNodes {

  private static final byte DONE = 0;

  /** Stands, but isn't this step's business. */
  private static final byte STANDING = 1;

  private static final byte WANTED = 2;

  /** Wanted, and left by the ordinary rings. */
  private static final byte LEFT = 3;

  /** Bit of wanted nodes at the rim. */
  private static final byte RIM = 4;

  /** Bit of wanted nodes in small patches. */
  private static final byte SMALL = 8;

  private final Lattice lattice;
  private final byte[] state;
  private final CoarseMap where;
  private int wanted;

  /**
   * @param step whose nodes they are
   * @param reach of the cutter
   * @param floor what stands
   * @param stepdownMm the cutter's
   * @param offMm nodes nearer to a wall than this aren't looked at
   */
  public StepNodes(
      DepthStep step, Reach reach, PlannedFloor floor, double stepdownMm, double offMm) {
    DistanceField field = reach.field(step.level());
    lattice = field.lattice;
    state = new byte[lattice.size()];
    BlockRange range = field.range;
    CoarseMap inside = range.between(offMm, Double.POSITIVE_INFINITY);
    boolean[] blocks = new boolean[range.across() * range.up()];
    Marker marker = new Marker(step, reach, floor, stepdownMm + 1e-6, (float) offMm);
    wanted =
        IntStream.range(0, range.up())
            .parallel()
            .map(up -> mark(marker, up, inside, range.across(), blocks))
            .sum();
    if (marker.finishes) {
      wanted += markThin(marker, floor.thin(), blocks, range.across());
    }
    where = new CoarseMap(lattice, BlockRange.BLOCK, blocks);
  }

  /** Marks the nodes in a row of blocks; how many are wanted. */
  private int mark(Marker marker, int up, CoarseMap inside, int across, boolean[] blocks) {
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
              int here = marker.mark(node, until);
              count[0] += here;
              blocks[up * across + a] |= here > 0;
              node = until + 1;
            }
          });
    }
    return count[0];
  }

  /** Marks nodes beside thin parts of the level; how many more are wanted. */
  private int markThin(Marker marker, ThinParts thin, boolean[] blocks, int across) {
    int[] count = {0};
    thin.nodes(marker.level)
        .filter(node -> marker.reach.levelAt(node) > marker.level && !wanted(node))
        .forEach(
            node -> {
              state[node] = marker.atRim(node) ? WANTED | RIM : WANTED;
              int row = node / lattice.columns() / BlockRange.BLOCK;
              blocks[row * across + node % lattice.columns() / BlockRange.BLOCK] = true;
              count[0]++;
            });
    return count[0];
  }

  /** Decides for each node what the step has to do with it. */
  private final class Marker {
    private final Reach reach;
    private final PlannedFloor floor;
    private final float[] distance;
    private final float off;
    private final float goal;
    private final double stepdown;
    private final boolean full;
    private final boolean finishes;
    private final int level;

    Marker(DepthStep step, Reach reach, PlannedFloor floor, double stepdown, float off) {
      this.reach = reach;
      this.floor = floor;
      this.stepdown = stepdown;
      this.off = off;
      distance = reach.field(step.level()).distance;
      goal = (float) (step.depthMm() - Stock.SAME_MM);
      full = step.full();
      level = step.level();
      finishes = step.depthMm() >= reach.depthMm(level) - 1e-9;
    }

    /** Marks a run; how many of its nodes are wanted. */
    int mark(int from, int last) {
      float limit = goal;
      float nearest = off;
      int count = 0;
      for (int node = from; node <= last; node++) {
        float cut = floor.depthAt(node);
        if (cut >= limit || distance[node] <= nearest) {
          continue;
        }
        int k = reach.levelAt(node);
        state[node] = STANDING;
        if (finishes && k == level || full && k >= level && reach.depthMm(k) - cut > stepdown) {
          count++;
          state[node] = atRim(node) ? WANTED | RIM : WANTED;
        }
      }
      return count;
    }

    /** Whether a neighbour of a node is beyond what the cutter reaches at the level. */
    private boolean atRim(int node) {
      int columns = lattice.columns();
      for (int at = node - columns; at <= node + columns; at += columns) {
        if (reach.levelAt(at - 1) < level
            || reach.levelAt(at) < level
            || reach.levelAt(at + 1) < level) {
          return true;
        }
      }
      return false;
    }
  }

  /** The lattice they are of. */
  Lattice lattice() {
    return lattice;
  }

  /** Blocks outside which no node is wanted. */
  public CoarseMap where() {
    return where;
  }

  /** Whether any node is wanted. */
  public boolean anyWanted() {
    return wanted > 0;
  }

  boolean wanted(int node) {
    return (state[node] & WANTED) != 0;
  }

  boolean left(int node) {
    return (state[node] & LEFT) == LEFT;
  }

  /** How many of a run are wanted. */
  int countWanted(int first, int last) {
    return count(first, last, WANTED, WANTED);
  }

  /** How many of a run are wanted and in no small patch. */
  int countWantedLarge(int first, int last) {
    return count(first, last, WANTED | SMALL, WANTED);
  }

  /** How many of a run were left. */
  int countLeft(int first, int last) {
    return count(first, last, LEFT, LEFT);
  }

  private int count(int first, int last, int mask, int bits) {
    byte[] at = state;
    int count = 0;
    for (int node = first; node <= last; node++) {
      if ((at[node] & mask) == bits) {
        count++;
      }
    }
    return count;
  }

  /** A run is cleared. */
  void clear(int first, int last) {
    Arrays.fill(state, first, last + 1, DONE);
  }

  /** Those at the rim are cleared. */
  void clearRim(int first, int last) {
    byte[] at = state;
    for (int node = first; node <= last; node++) {
      if ((at[node] & RIM) != 0) {
        at[node] = DONE;
      }
    }
  }

  /** Wanted nodes of a run go on standing. */
  void leaveStanding(int first, int last) {
    for (int node = first; node <= last; node++) {
      if ((state[node] & WANTED) != 0) {
        state[node] = STANDING;
        wanted--;
      }
    }
  }

  /** The connected patches of wanted nodes. */
  Patches patches() {
    return new Patches(lattice, this::wanted, where);
  }

  /** A run is part of a small patch. */
  void markSmall(int first, int last) {
    for (int node = first; node <= last; node++) {
      state[node] |= SMALL;
    }
  }

  /** Marks wanted nodes as left by the ordinary rings; whether there are any. */
  public boolean markLeft() {
    boolean[] any = {false};
    where.eachRun(
        (first, last) -> {
          byte[] at = state;
          for (int node = first; node <= last; node++) {
            if ((at[node] & WANTED) != 0) {
              at[node] |= LEFT;
              any[0] = true;
            }
          }
        });
    return any[0];
  }

  /** Blocks near which something is wanted. */
  public CoarseMap nearWanted(double radiusMm) {
    return new CoarseMap(lattice, (first, last) -> any(first, last, WANTED), radiusMm, where);
  }

  /**
   * Blocks near which something was left.
   *
   * @param within blocks outside which nothing was
   */
  CoarseMap nearLeft(double radiusMm, CoarseMap within) {
    return new CoarseMap(lattice, (first, last) -> any(first, last, LEFT), radiusMm, within);
  }

  private boolean any(int first, int last, int bits) {
    byte[] at = state;
    for (int node = first; node <= last; node++) {
      if ((at[node] & bits) == bits) {
        return true;
      }
    }
    return false;
  }
}
