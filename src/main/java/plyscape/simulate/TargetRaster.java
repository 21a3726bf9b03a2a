package plyscape.simulate;

import java.util.Arrays;
import java.util.List;
import plyscape.grid.CellFrame;

/**
 * Which target holds at each cell's centre: index into the list of targets, or {@link #NONE} where
 * the panel stays uncut.
 *
 * <p>By scan lines and the even-odd rule. A centre on an outline belongs to the side right of it or
 * above it, worked out from the same two points whichever ring an edge comes from, so that
 * neighbours never both get or both miss a cell.
 */
final class TargetRaster {

  static final short NONE = -1;

  private final CellFrame frame;

  /** Of one target: where its outlines cross each row's line of centres, and how often. */
  private final double[][] crossings;

  private final int[] counts;

  private TargetRaster(CellFrame frame) {
    this.frame = frame;
    crossings = new double[frame.rows()][];
    counts = new int[frame.rows()];
  }

  /** Rasters; where targets overlap the later one wins. */
  static short[] of(CellFrame frame, List<Target> targets) {
    if (targets.size() > Short.MAX_VALUE) {
      throw new IllegalArgumentException(targets.size() + " targets: at most " + Short.MAX_VALUE);
    }
    short[] cells = new short[frame.size()];
    Arrays.fill(cells, NONE);
    for (int t = 0; t < targets.size(); t++) {
      new TargetRaster(frame).fill(targets.get(t).rings(), cells, (short) t);
    }
    return cells;
  }

  private void fill(double[][] rings, short[] cells, short value) {
    for (double[] ring : rings) {
      int n = ring.length / 2;
      for (int i = 0; i < n; i++) {
        int j = (i + 1) % n;
        edge(ring[2 * i], ring[2 * i + 1], ring[2 * j], ring[2 * j + 1]);
      }
    }
    for (int row = 0; row < frame.rows(); row++) {
      if (counts[row] == 0) {
        continue;
      }
      double[] xs = crossings[row];
      Arrays.sort(xs, 0, counts[row]);
      int base = row * frame.columns();
      for (int k = 0; k + 1 < counts[row]; k += 2) {
        int from = column(xs[k]);
        int to = column(xs[k + 1]);
        if (from < to) {
          Arrays.fill(cells, base + from, base + to, value);
        }
      }
    }
  }

  /** First column whose centre is at or right of x, within 0 to the count of columns. */
  private int column(double x) {
    int c = (int) Math.ceil((x - frame.minX()) / frame.cellX() - 0.5);
    c = Math.max(0, Math.min(frame.columns(), c));
    if (c > 0 && frame.centreX(c - 1) >= x) { // mends the division's rounding
      c--;
    } else if (c < frame.columns() && frame.centreX(c) < x) {
      c++;
    }
    return c;
  }

  private void edge(double ax, double ay, double bx, double by) {
    if (ay == by) {
      return;
    }
    boolean up = ay < by;
    double x0 = up ? ax : bx;
    double y0 = up ? ay : by;
    double x1 = up ? bx : ax;
    double y1 = up ? by : ay;
    int row = Math.max(0, (int) Math.ceil((y0 - frame.minY()) / frame.cellY() - 0.5 - 1e-6));
    for (; row < frame.rows(); row++) {
      double y = frame.centreY(row);
      if (y < y0) {
        continue;
      }
      if (y >= y1) {
        return;
      }
      cross(row, x0 + (x1 - x0) * ((y - y0) / (y1 - y0)));
    }
  }

  private void cross(int row, double x) {
    double[] xs = crossings[row];
    if (xs == null) {
      xs = new double[16];
      crossings[row] = xs;
    } else if (xs.length == counts[row]) {
      xs = Arrays.copyOf(xs, 2 * xs.length);
      crossings[row] = xs;
    }
    xs[counts[row]++] = x;
  }
}
