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

  public final Lattice lattice;
  final float[] depth;

  /**
   * The same, but lowered only where all wood up to the middle between nodes is surely gone; what
   * rapids go by. Nodes at the very edge of a cut stay high.
   */
  private final float[] sure;

  private final double inset;
  private final Sweep sweep;
  private int count;
  private double taken;
  private float highest;

  /** An untouched panel. */
  public Stock(Lattice lattice) {
    this.lattice = lattice;
    depth = new float[lattice.size()];
    sure = new float[lattice.size()];
    inset = 0.71 * lattice.stepMm();
    sweep = new Sweep(lattice);
  }

  /** The same panel once more, to be cut otherwise. */
  public Stock copy() {
    Stock copy = new Stock(lattice);
    System.arraycopy(depth, 0, copy.depth, 0, depth.length);
    System.arraycopy(sure, 0, copy.sure, 0, sure.length);
    return copy;
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
    lowerSure(sweep.fresh(ax, ay, bx, by, radius - inset), target);
    return count;
  }

  /** Cuts everything under a disk; the nodes newly cut. */
  public int cutDisk(double x, double y, double radius, double toDepth) {
    count = 0;
    taken = 0;
    float target = (float) toDepth;
    lower(sweep.all(x, y, x, y, radius), target);
    lowerSure(sweep.all(x, y, x, y, radius - inset), target);
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

  private void lowerSure(int found, float target) {
    int[] runs = sweep.runs;
    for (int r = 0; r < found; r += 2) {
      for (int k = runs[r]; k <= runs[r + 1]; k++) {
        if (sure[k] < target) {
          sure[k] = target;
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
   * aside, mm: at the nodes, and between them as far as it isn't surely gone.
   */
  public double bitten(double ax, double ay, double bx, double by, double radius) {
    double least =
        least(depth, sweep.all(ax, ay, bx, by, radius - RIM_MM), Double.POSITIVE_INFINITY);
    double within = radius - Math.max(RIM_MM, inset) - 1e-6;
    return within <= 0 ? least : least(sure, sweep.all(ax, ay, bx, by, within), least);
  }

  /** The least of a value and those of the runs that the sweep found last. */
  private double least(float[] values, int found, double or) {
    int[] runs = sweep.runs;
    double least = or;
    for (int r = 0; r < found; r += 2) {
      int last = runs[r + 1];
      for (int k = runs[r]; k <= last; k++) {
        least = values[k] < least ? values[k] : least;
      }
    }
    return least;
  }

  /** Depth to which the node nearest to a point has been cut, mm. */
  public double at(double x, double y) {
    return depth[lattice.nearest(x, y)];
  }

  /** Depth above which no wood stands at the node nearest to a point, mm. */
  public double sureAt(double x, double y) {
    return sure[lattice.nearest(x, y)];
  }

  /** Depth above which no wood stands under the disk on its way, mm: what a rapid must clear. */
  public double highest(double ax, double ay, double bx, double by, double radius) {
    highest = Float.POSITIVE_INFINITY;
    sweep.all(
        ax,
        ay,
        bx,
        by,
        radius,
        (first, last) -> {
          for (int k = first; k <= last; k++) {
            if (sure[k] < highest) {
              highest = sure[k];
            }
          }
        });
    return highest == Float.POSITIVE_INFINITY ? 0 : highest;
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
