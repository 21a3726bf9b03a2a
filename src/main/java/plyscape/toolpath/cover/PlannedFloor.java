package plyscape.toolpath.cover;

import java.util.List;
import java.util.stream.IntStream;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.Piece;

/**
 * How deep the pieces chosen so far will leave each lattice node, mm, positive down, and where they
 * have run along walls. What is chosen next goes by it, so that nothing has to wait until the
 * pieces are put in order and become moves. Ways between pieces, which cut a little more, aren't in
 * it; {@link plyscape.toolpath.lattice.Stock} has them.
 */
public final class PlannedFloor {

  private static final int GROUPS = 8;

  private final Lattice lattice;
  private final float[] depth;
  private final CutPaths paths;
  private final ThinParts thin;

  /**
   * An untouched panel.
   *
   * @param thin what nodes don't show of the levels
   */
  public PlannedFloor(Lattice lattice, ThinParts thin) {
    this(lattice, new float[lattice.size()], new CutPaths(), thin.copy());
  }

  private PlannedFloor(Lattice lattice, float[] depth, CutPaths paths, ThinParts thin) {
    this.lattice = lattice;
    this.depth = depth;
    this.paths = paths;
    this.thin = thin;
  }

  /** The same panel once more, for another choice of cutters. */
  public PlannedFloor copy() {
    return new PlannedFloor(lattice, depth.clone(), paths.copy(), thin.copy());
  }

  /** How deep a node is cut, mm. */
  float depthAt(int node) {
    return depth[node];
  }

  /** Thin parts that still stand. */
  ThinParts thin() {
    return thin;
  }

  /** The ways along walls so far. */
  CutPaths paths() {
    return paths;
  }

  /** Notes the ways along walls of a cutter that cuts pieces. */
  public void pass(List<Piece> pieces, double radius, double toDepth) {
    paths.add(pieces, radius, toDepth);
  }

  /**
   * Clears all along pieces, in groups on all processors: as every node goes down to the same
   * depth, it doesn't matter who comes first.
   */
  public void clear(List<Piece> pieces, double radius, double toDepth) {
    thin.cut(pieces, radius, toDepth);
    float target = (float) toDepth;
    int group = pieces.size() / GROUPS + 1;
    IntStream.range(0, GROUPS)
        .parallel()
        .forEach(
            g -> {
              Sweep sweep = new Sweep(lattice);
              int end = Math.min(pieces.size(), (g + 1) * group);
              for (int p = g * group; p < end; p++) {
                clear(pieces.get(p), sweep, radius, target);
              }
            });
  }

  private void clear(Piece piece, Sweep sweep, double radius, float target) {
    int n = piece.size();
    double[] x = piece.x();
    double[] y = piece.y();
    lower(sweep, sweep.all(x[0], y[0], x[0], y[0], radius), target);
    for (int i = 1; i < n + (piece.closed() ? 1 : 0); i++) {
      int to = i == n ? 0 : i;
      lower(sweep, sweep.fresh(x[i - 1], y[i - 1], x[to], y[to], radius), target);
    }
  }

  private void lower(Sweep sweep, int found, float target) {
    int[] runs = sweep.runs;
    for (int r = 0; r < found; r += 2) {
      int last = runs[r + 1];
      for (int k = runs[r]; k <= last; k++) {
        if (depth[k] < target) {
          depth[k] = target;
        }
      }
    }
  }
}
