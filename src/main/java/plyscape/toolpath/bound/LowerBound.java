package plyscape.toolpath.bound;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.task.PocketLevel;

/**
 * Seconds that no plan with these cutters can beat: {@code lower_bound_s} of src/contract.md,
 * section 8. What a cutter reaches is the opening of the pocket itself by its disk ({@link
 * OpenedPocket}). Areas are counted at the nodes of a lattice that lies across the panel's axes, so
 * that walls along them, and slots hardly wider than a cutter, are met by nodes in proportion to
 * their area: at 0.2 mm good to about 0.5 %.
 *
 * <p>Usage: {@code double s = LowerBound.seconds(levels, tools, carved, LowerBound.CELL_MM);} the
 * levels in any order, each a pocket that holds all deeper ones; levels at depth 0 cost nothing.
 */
public final class LowerBound {

  /** Serves cutters down to about 1 mm. */
  public static final double CELL_MM = 0.2;

  /** Keeps memory near 200 MB on very large panels; their cells are made larger. */
  private static final double MAX_CELLS = 1.1e7;

  /**
   * How the lattice is turned against the panel, radians: its tangent is the golden ratio's, less a
   * whole number, to which no rows of nodes come back soon.
   */
  private static final double TURN = Math.atan(Math.sqrt(5) - 2);

  private final List<PocketLevel> levels;
  private final List<Tool> tools;
  private final Lattice lattice;
  private final AffineTransformation turn;
  private final byte[] target;
  private final byte[][] deepest;

  private LowerBound(List<PocketLevel> levels, List<Tool> tools, Box carved, double cellMm) {
    this.levels = levels;
    this.tools = tools;
    double centreX = (carved.minX() + carved.maxX()) / 2;
    double centreY = (carved.minY() + carved.maxY()) / 2;
    turn = AffineTransformation.rotationInstance(TURN, centreX, centreY);
    double step = Math.max(cellMm, Math.sqrt(carved.area() / MAX_CELLS));
    double width = carved.width() * Math.cos(TURN) + carved.height() * Math.sin(TURN);
    double height = carved.width() * Math.sin(TURN) + carved.height() * Math.cos(TURN);
    int columns = (int) Math.ceil(width / step) + 5;
    int rows = (int) Math.ceil(height / step) + 5;
    lattice =
        new Lattice(
            centreX - (columns - 1) * step / 2,
            centreY - (rows - 1) * step / 2,
            step,
            columns,
            rows);
    target = new byte[lattice.size()];
    deepest = new byte[tools.size()][lattice.size()];
  }

  /**
   * The bound in seconds, over all that is cut and can be reached at its target.
   *
   * @param levels the pockets, at most 120 with a depth over 0
   * @param tools the cutters
   * @param carved outside it all is wall
   * @param cellMm distance of the nodes
   */
  public static double seconds(
      List<PocketLevel> levels, List<Tool> tools, Box carved, double cellMm) {
    return rastered(levels, tools, carved, cellMm).sum();
  }

  /** The pockets and the cutters' reach in them, by nodes. */
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
    for (int k = 0; k < cut.size(); k++) {
      bound.reach(k);
    }
    return bound;
  }

  /**
   * Marks where a level's pocket is and where each cutter reaches in it. As pockets nest, so do
   * their openings: the deepest level comes last.
   */
  private void reach(int level) {
    MultiPolygon pocket = (MultiPolygon) turn.transform(levels.get(level).pocket());
    OpenedPocket opened = new OpenedPocket(pocket, lattice);
    byte mark = (byte) (level + 1);
    opened.mark(target, mark);
    IntStream.range(0, tools.size())
        .parallel()
        .forEach(t -> opened.mark(tools.get(t).radiusMm(), deepest[t], mark));
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

  /** Area that one node stands for. */
  double cellMm2() {
    return lattice.nodeAreaMm2();
  }

  /** Counts the nodes of each kind (target, reach of each cutter). */
  SortedMap<Kind, Integer> kinds() {
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
