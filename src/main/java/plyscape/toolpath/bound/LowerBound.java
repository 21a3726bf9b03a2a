package plyscape.toolpath.bound;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.CellRuns;
import plyscape.machine.Tool;
import plyscape.region.RegionRaster;
import plyscape.toolpath.task.PocketLevel;

/**
 * Seconds that no plan with these cutters can beat: {@code lower_bound_s} of src/contract.md,
 * section 8. Pockets and the cutters' reach in them are rastered, without bias to either side of a
 * wall, so that at 0.2 mm the figure is good to about 0.5 % unless most of the area is narrower
 * than a cutter.
 *
 * <p>Usage: {@code double s = LowerBound.seconds(levels, tools, carved, LowerBound.CELL_MM);} the
 * levels in any order, each a pocket that holds all deeper ones; levels at depth 0 cost nothing.
 */
public final class LowerBound {

  /** Cell that serves cutters down to about 1 mm. */
  public static final double CELL_MM = 0.2;

  /** Keeps memory near 200 MB on very large panels; their cells are made larger. */
  private static final double MAX_CELLS = 1.6e7;

  private final List<PocketLevel> levels;
  private final List<Tool> tools;
  private final CellFrame frame;
  private final CellRuns[] pockets;
  private final byte[] target;
  private final byte[][] deepest;

  private LowerBound(List<PocketLevel> levels, List<Tool> tools, Box carved, double cellMm) {
    this.levels = levels;
    this.tools = tools;
    // One cell around the carved area, which is wall.
    double cell = Math.max(cellMm, Math.sqrt(carved.area() / MAX_CELLS));
    int columns = (int) Math.ceil(carved.width() / cell);
    cell = carved.width() / columns;
    int rows = (int) Math.ceil(carved.height() / cell);
    frame =
        new CellFrame(
            carved.minX() - cell, carved.minY() - cell, cell, cell, columns + 2, rows + 2);
    pockets = new CellRuns[levels.size()];
    target = new byte[frame.size()];
    deepest = new byte[tools.size()][frame.size()];
  }

  /**
   * The bound in seconds, over all cells that are cut and can be reached at their target.
   *
   * @param levels the pockets, at most 120 with a depth over 0
   * @param tools the cutters
   * @param carved outside it all is wall
   * @param cellMm working cell
   */
  public static double seconds(
      List<PocketLevel> levels, List<Tool> tools, Box carved, double cellMm) {
    return rastered(levels, tools, carved, cellMm).sum();
  }

  /** The pockets and the cutters' reach in them, rastered. */
  static LowerBound rastered(
      List<PocketLevel> levels, List<Tool> tools, Box carved, double cellMm) {
    List<PocketLevel> cut =
        levels.stream()
            .filter(l -> l.depthMm() > 0 && !l.pocket().isEmpty())
            .sorted(Comparator.comparingDouble(PocketLevel::depthMm))
            .toList();
    if (cut.size() > 120) {
      throw new IllegalArgumentException(cut.size() + " levels");
    }
    var bound = new LowerBound(cut, tools, carved, cellMm);
    IntStream.range(0, cut.size()).parallel().forEach(k -> bound.pockets[k] = bound.pocket(k));
    IntStream.range(0, tools.size()).parallel().forEach(bound::reach);
    return bound;
  }

  private CellRuns pocket(int level) {
    boolean[] inside = RegionRaster.inside(levels.get(level).pocket(), frame);
    return CellRuns.of(inside, frame.columns(), frame.rows());
  }

  /**
   * Counts for a cutter in how many levels, from the top, it reaches each cell: the opening of each
   * pocket by its disk. Half a cell is added to the radius against walls, as a wall stands half a
   * cell before the centre of the first wall cell; and half a cell when the disk is grown back, as
   * the outermost allowed centre lies up to a cell beyond the last allowed cell's.
   */
  private void reach(int tool) {
    double radius = tools.get(tool).radiusMm() / frame.cellX() + 0.5;
    int limit = (int) Math.ceil(radius * radius - 1e-9);
    int back = (int) Math.floor(radius * radius + 1e-9);
    for (CellRuns pocket : pockets) {
      CellRuns allowed = pocket.others().grown(limit - 1).others();
      pocket.addShared(allowed.grown(back), deepest[tool]);
    }
  }

  /** Prices the kinds, in a fixed order. */
  private double sum() {
    ChainCost cost = chains();
    double cellArea = cellMm2();
    double seconds = 0;
    for (Map.Entry<Kind, Integer> entry : kinds().entrySet()) {
      double perMm2 = cost.least(entry.getKey().target, entry.getKey().deepest);
      if (Double.isFinite(perMm2)) {
        seconds += perMm2 * cellArea * entry.getValue();
      }
    }
    return seconds;
  }

  /** What chains of these cutters cost. */
  ChainCost chains() {
    return new ChainCost(levels.stream().mapToDouble(PocketLevel::depthMm).toArray(), tools);
  }

  /** Area of a cell. */
  double cellMm2() {
    return frame.cellX() * frame.cellY();
  }

  /** Counts the cells of each kind (target, reach of each cutter); asked for once. */
  SortedMap<Kind, Integer> kinds() {
    for (CellRuns pocket : pockets) {
      pocket.addShared(pocket, target);
    }
    var kinds = new TreeMap<Kind, Integer>();
    int from = 0;
    for (int i = 1; i <= target.length; i++) {
      // Neighbours in a row are mostly of one kind.
      if (i == target.length || !same(from, i)) {
        if (target[from] > 0) {
          kinds.merge(kind(from), i - from, Integer::sum);
        }
        from = i;
      }
    }
    return kinds;
  }

  private boolean same(int a, int b) {
    boolean same = target[a] == target[b];
    for (byte[] reach : deepest) {
      same &= reach[a] == reach[b];
    }
    return same;
  }

  private Kind kind(int cell) {
    int[] reach = new int[deepest.length];
    for (int t = 0; t < reach.length; t++) {
      reach[t] = deepest[t][cell] - 1;
    }
    return new Kind(target[cell] - 1, reach);
  }

  /**
   * A kind of place.
   *
   * @param target index of the level that it is cut to
   * @param deepest by cutter the index of the deepest level in which it reaches the place, -1 for
   *     none
   */
  record Kind(int target, int[] deepest) implements Comparable<Kind> {
    @Override
    public int compareTo(Kind other) {
      return target != other.target
          ? Integer.compare(target, other.target)
          : Arrays.compare(deepest, other.deepest);
    }
  }
}
