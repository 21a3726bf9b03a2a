package plyscape.bend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/** Heights at all nodes of a rectangular grid, bilinear between them. Immutable. */
final class GridTop implements TopFace {

  /** Coordinates nearer than this are the same line of the grid, mm. */
  private static final double SAME_MM = 0.01;

  private static final int[][] BESIDE = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {-1, -1}};

  private final double[] xs;
  private final double[] ys;
  private final double[][] heights;

  private GridTop(double[] xs, double[] ys, double[][] heights) {
    this.xs = xs;
    this.ys = ys;
    this.heights = heights;
  }

  /**
   * A grid from its nodes, or null when the readings aren't all the nodes of one: two lines or more
   * in each direction.
   */
  static GridTop of(List<TopReading> readings) {
    double[] xs = lines(readings.stream().mapToDouble(TopReading::x).sorted().toArray());
    double[] ys = lines(readings.stream().mapToDouble(TopReading::y).sorted().toArray());
    if (xs.length < 2 || ys.length < 2 || xs.length * ys.length != readings.size()) {
      return null;
    }
    double[][] heights = new double[ys.length][xs.length];
    Arrays.stream(heights).forEach(row -> Arrays.fill(row, Double.NaN));
    for (TopReading r : readings) {
      int column = nearest(xs, r.x());
      int row = nearest(ys, r.y());
      if (!Double.isNaN(heights[row][column])) {
        return null;
      }
      heights[row][column] = r.z();
    }
    return new GridTop(xs, ys, heights);
  }

  /**
   * Neighbours of each node in a Delaunay triangulation of a grid, or null when the readings aren't
   * one: along its lines, and over the diagonal from the lower left of each cell.
   */
  static List<SortedSet<Integer>> neighbours(List<TopReading> readings) {
    GridTop grid = of(readings);
    if (grid == null) {
      return null;
    }
    int columns = grid.xs.length;
    int[] node = new int[readings.size()];
    int[] place = new int[readings.size()];
    for (int i = 0; i < node.length; i++) {
      TopReading r = readings.get(i);
      place[i] = nearest(grid.ys, r.y()) * columns + nearest(grid.xs, r.x());
      node[place[i]] = i;
    }
    List<SortedSet<Integer>> out = new ArrayList<>();
    for (int i = 0; i < node.length; i++) {
      SortedSet<Integer> beside = new TreeSet<>();
      for (int[] step : BESIDE) {
        int column = place[i] % columns + step[0];
        int row = place[i] / columns + step[1];
        if (column >= 0 && column < columns && row >= 0 && row < grid.ys.length) {
          beside.add(node[row * columns + column]);
        }
      }
      out.add(beside);
    }
    return out;
  }

  @Override
  public double heightMm(double x, double y) {
    int c = interval(xs, x);
    int r = interval(ys, y);
    double u = share(xs, c, x);
    double v = share(ys, r, y);
    double below = heights[r][c] + (heights[r][c + 1] - heights[r][c]) * u;
    double above = heights[r + 1][c] + (heights[r + 1][c + 1] - heights[r + 1][c]) * u;
    return below + (above - below) * v;
  }

  @Override
  public int piece(double x, double y) {
    return piece(ys, y) * (xs.length + 1) + piece(xs, x);
  }

  private static int piece(double[] lines, double value) {
    int i = 0;
    while (i < lines.length && lines[i] <= value) {
      i++;
    }
    return i;
  }

  private static double[] lines(double[] sorted) {
    int n = 0;
    double[] out = new double[sorted.length];
    for (double value : sorted) {
      if (n == 0 || value - out[n - 1] > SAME_MM) {
        out[n++] = value;
      }
    }
    return Arrays.copyOf(out, n);
  }

  private static int nearest(double[] lines, double value) {
    int best = 0;
    for (int i = 1; i < lines.length; i++) {
      best = Math.abs(lines[i] - value) < Math.abs(lines[best] - value) ? i : best;
    }
    return best;
  }

  /** The interval that holds a value, the outermost for those beyond. */
  private static int interval(double[] lines, double value) {
    return Math.min(Math.max(piece(lines, value) - 1, 0), lines.length - 2);
  }

  private static double share(double[] lines, int from, double value) {
    double share = (value - lines[from]) / (lines[from + 1] - lines[from]);
    return Math.min(1, Math.max(0, share));
  }
}
