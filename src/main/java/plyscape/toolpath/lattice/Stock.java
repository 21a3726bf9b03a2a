package plyscape.toolpath.lattice;

/**
 * How deep the panel has been cut so far at each lattice node, mm, positive down: 0 is the
 * untouched top face. The planner's own picture, from which it reads engagement and the height that
 * a rapid must clear.
 */
public final class Stock {

  /** Nodes within this of a depth count as cut to it. */
  public static final float SAME_MM = 1e-4f;

  /** A cutter may bite deeper than its stepdown with so much of its edge, mm. */
  public static final double RIM_MM = 0.05;

  /** Far more than coordinates are rounded by, far less than anything on a panel, mm. */
  private static final double ROUNDING_MM = 1e-6;

  public final Lattice lattice;
  final float[] depth;

  /**
   * Depth to which the whole cell around each node is surely cut: what rapids and bites go by.
   * Where the edge of a cut goes through a cell, {@link #parts} says more.
   */
  private final float[] sure;

  private final CellParts parts;

  private final CellCover cover;

  /** From a node to the corners of its cell, and a little more for rounding, mm. */
  private final double inset;

  private Way way = new Way();

  // Where the last cut ended; what lies beyond that end is left to the next, which mostly goes on
  // from there and need not look again at what this one saw.
  private Way last = new Way();
  private boolean open;
  private double endX = Double.NaN;
  private double endY;
  private double endRadius;
  private float endDepth;

  private final Sweep sweep;
  private int count;
  private double taken;
  private float highest;

  /** An untouched panel. */
  public Stock(Lattice lattice) {
    this(
        lattice,
        new float[lattice.size()],
        new float[lattice.size()],
        new CellParts(lattice.size()));
  }

  private Stock(Lattice lattice, float[] depth, float[] sure, CellParts parts) {
    this.lattice = lattice;
    this.depth = depth;
    this.sure = sure;
    this.parts = parts;
    inset = 0.71 * lattice.stepMm();
    sweep = new Sweep(lattice);
    cover = new CellCover(lattice);
  }

  /** The same panel once more, to be cut otherwise. */
  public Stock copy() {
    end();
    return new Stock(lattice, depth.clone(), sure.clone(), parts.copy());
  }

  /**
   * Cuts along a line to a depth; the nodes newly cut, without those already under the disk at its
   * start.
   */
  public int cut(double ax, double ay, double bx, double by, double radius, double toDepth) {
    count = 0;
    taken = 0;
    float target = (float) toDepth;
    lower(sweep.fresh(ax, ay, bx, by, radius), target);
    boolean onward = endsAt(ax, ay, radius, target);
    if (!onward) {
      end();
    }
    way.set(ax, ay, bx, by);
    lowerSure(sureRuns(ax, ay, bx, by, radius, onward), radius, target, onward);
    close(bx, by, radius, target);
    open = true;
    return count;
  }

  /** Cuts everything under a disk; the nodes newly cut. */
  public int cutDisk(double x, double y, double radius, double toDepth) {
    count = 0;
    taken = 0;
    float target = (float) toDepth;
    lower(sweep.all(x, y, x, y, radius), target);
    boolean onward = endsAt(x, y, radius, target);
    if (!onward) {
      end();
    }
    lowerSureDisk(x, y, radius, target, onward);
    return count;
  }

  /** By how much the nodes newly cut by the last cut got deeper, added up, mm. */
  public double takenMm() {
    return taken;
  }

  /** Lowers the runs that the sweep found last. */
  private void lower(int found, float target) {
    int[] runs = sweep.runs;
    float limit = target - SAME_MM;
    for (int r = 0; r < found; r += 2) {
      for (int k = runs[r]; k <= runs[r + 1]; k++) {
        if (depth[k] < limit) {
          taken += target - depth[k];
          depth[k] = target;
          count++;
        }
      }
    }
  }

  private boolean endsAt(double x, double y, double radius, float target) {
    return endX == x && endY == y && endRadius == radius && endDepth == target;
  }

  /** Keeps in mind what the last cut saw. */
  private void close(double x, double y, double radius, float target) {
    Way swap = last;
    last = way;
    way = swap;
    endX = x;
    endY = y;
    endRadius = radius;
    endDepth = target;
  }

  /** Cuts what lies beyond the end of the last cut. */
  private void end() {
    if (open) {
      lowerSureDisk(endX, endY, endRadius, endDepth, true);
    }
  }

  private void lowerSureDisk(double x, double y, double radius, float target, boolean onward) {
    way.set(x, y, x, y);
    lowerSure(sureRuns(x, y, x, y, radius, onward), radius, target, onward);
    close(x, y, radius, target);
    open = false;
  }

  /** Finds the cells of which a disk covers any part on its way. */
  private int sureRuns(double ax, double ay, double bx, double by, double radius, boolean onward) {
    double least = radius - cover.reachMm();
    cover.set(ax, ay, bx, by, least);
    double known = onward ? radius - inset - ROUNDING_MM : 0;
    return sweep.fresh(ax, ay, bx, by, least + cover.outermostMm() + ROUNDING_MM, known);
  }

  /**
   * Lowers cells, in part or as a whole, in the runs that the sweep found last. Cells well beyond
   * the end of the way wait for the next.
   *
   * @param onward whether the last cut ended where the way starts, with the same disk and depth: it
   *     saw to the cells behind, unless they lay beyond its end
   */
  private void lowerSure(int found, double radius, float target, boolean onward) {
    int[] runs = sweep.runs;
    double within = (radius - inset) * Math.abs(radius - inset);
    int columns = lattice.columns();
    for (int r = 0; r < found; r += 2) {
      int end = runs[r + 1];
      int row = runs[r] / columns; // a run lies in one row
      double y = lattice.y(row);
      for (int k = runs[r]; k <= end; k++) {
        if (sure[k] >= target) {
          continue;
        }
        double x = lattice.x(k - row * columns);
        if (onward && way.before(x, y) > inset && last.beyond(x, y) <= inset) {
          continue;
        }
        if (way.squaredTo(x, y) <= within) {
          sure[k] = parts.cut(k, sure[k], CellCover.ALL, target);
        } else if (way.beyond(x, y) <= inset) {
          sure[k] = parts.cut(k, sure[k], cover.of(k - row * columns, row), target);
        }
      }
    }
  }

  /**
   * Nodes that stand above a depth under the disk on its way, without those under it at the start.
   */
  public int standing(
      double ax, double ay, double bx, double by, double radius, double aboveDepth) {
    count = 0;
    float limit = (float) aboveDepth - SAME_MM;
    sweep.fresh(
        ax,
        ay,
        bx,
        by,
        radius,
        (first, last) -> {
          for (int k = first; k <= last; k++) {
            if (depth[k] < limit) {
              count++;
            }
          }
        });
    return count;
  }

  /**
   * Depth of the highest wood that the disk bites into on its way, the outermost {@link #RIM_MM}
   * aside, mm.
   */
  public double bitten(double ax, double ay, double bx, double by, double radius) {
    return highest(ax, ay, bx, by, radius - RIM_MM);
  }

  /** Depth to which the node nearest to a point has been cut, mm. */
  public double at(double x, double y) {
    return depth[lattice.nearest(x, y)];
  }

  /** Depth above which no wood stands at the node nearest to a point, mm. */
  public double sureAt(double x, double y) {
    end();
    return sure[lattice.nearest(x, y)];
  }

  /** Depth above which no wood stands under the disk on its way, mm: what a rapid must clear. */
  public double highest(double ax, double ay, double bx, double by, double radius) {
    end();
    way.set(ax, ay, bx, by);
    cover.set(ax, ay, bx, by, radius + cover.reachMm());
    int found = sweep.all(ax, ay, bx, by, radius + inset);
    int[] runs = sweep.runs;
    int columns = lattice.columns();
    double within = (radius - inset) * Math.abs(radius - inset);
    double least = Double.POSITIVE_INFINITY;
    for (int r = 0; r < found; r += 2) {
      int last = runs[r + 1];
      int row = runs[r] / columns;
      double y = lattice.y(row);
      for (int k = runs[r]; k <= last; k++) {
        if (sure[k] >= least) {
          continue;
        }
        int column = k - row * columns;
        boolean whole = way.squaredTo(lattice.x(column), y) <= within;
        least = whole ? sure[k] : parts.highest(k, sure[k], cover.of(column, row), least);
      }
    }
    return least == Double.POSITIVE_INFINITY ? 0 : least;
  }

  /**
   * Depth of the highest wood under the disk on its way that stands inside a pocket, as far as the
   * nodes tell, mm.
   */
  public double highestInside(
      float[] toWall, double ax, double ay, double bx, double by, double radius) {
    highest = Float.POSITIVE_INFINITY;
    sweep.all(
        ax,
        ay,
        bx,
        by,
        radius,
        (first, last) -> {
          for (int k = first; k <= last; k++) {
            if (toWall[k] > 0 && depth[k] < highest) {
              highest = depth[k];
            }
          }
        });
    return highest == Float.POSITIVE_INFINITY ? 0 : highest;
  }
}
