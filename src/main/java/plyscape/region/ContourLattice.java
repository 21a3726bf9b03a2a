package plyscape.region;

import java.util.Arrays;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;

/**
 * Elevations on the lines through cell centres and along the carved box's edges, between which
 * contours are traced. Coarse rasters are refined by bilinear interpolation: the contour of a
 * bilinear cell is a hyperbola, and on a lattice of {@link #SPACING_MM} its chords stay within a
 * few micrometres of it. Fine rasters are taken as they are.
 *
 * <p>Elevations are worked out when they are asked for: a large landscape has a hundred times more
 * nodes than its contours come near.
 *
 * @param grid elevations, metres
 * @param x lines across
 * @param y lines along
 */
record ContourLattice(Grid grid, Axis x, Axis y) {

  /** Lattice lines are at most this far apart, panel mm. */
  static final double SPACING_MM = 0.25;

  /** Samples a grid over the box; beyond the outermost cell centres the edge's values hold. */
  static ContourLattice of(Grid grid, Box carved) {
    CellFrame frame = grid.frame();
    Axis x = Axis.of(frame.minX(), frame.cellX(), frame.columns(), carved.minX(), carved.maxX());
    Axis y = Axis.of(frame.minY(), frame.cellY(), frame.rows(), carved.minY(), carved.maxY());
    Math.multiplyExact(x.at.length, y.at.length); // nodes are numbered
    return new ContourLattice(grid, x, y);
  }

  /** Where a line across lies, panel mm; rising, the first and last are the box's edges. */
  double xMm(int column) {
    return x.at[column];
  }

  /** The same of a line along. */
  double yMm(int row) {
    return y.at[row];
  }

  /** Elevation at a node, metres; nodes are numbered row by row from the south. */
  double z(int node) {
    int row = node / x.at.length;
    return z(node - row * x.at.length, row);
  }

  private double z(int column, int row) {
    double[] values = grid.values();
    int width = grid.frame().columns();
    int south = y.cell[row] * width + x.cell[column];
    int north = y.fraction[row] == 0 ? south : south + width;
    double fx = x.fraction[column];
    double low = values[south];
    double high = values[north];
    if (fx != 0) {
      low += fx * (values[south + 1] - low);
      high += fx * (values[north + 1] - high);
    }
    return low + y.fraction[row] * (high - low);
  }

  /** Elevations of a row of nodes. */
  void row(int row, double[] out) {
    for (int i = 0; i < x.at.length; i++) {
      out[i] = z(i, row);
    }
  }

  int columns() {
    return x.at.length;
  }

  int rows() {
    return y.at.length;
  }

  /**
   * Lattice positions along one axis, with the cell centre below each and the fraction of the way
   * to the next.
   */
  record Axis(double[] at, int[] cell, double[] fraction) {

    static Axis of(double min, double size, int cells, double from, double to) {
      double[] at = between(breaks(min, size, cells, from, to));
      int[] cell = new int[at.length];
      double[] fraction = new double[at.length];
      for (int i = 0; i < at.length; i++) {
        double u = Math.min(Math.max((at[i] - min) / size - 0.5, 0), cells - 1);
        // Exactly on a centre must stay there in spite of rounding, so that values on a break count
        // as such.
        double near = Math.rint(u);
        if (Math.abs(u - near) < 1e-9) {
          u = near;
        }
        cell[i] = (int) u;
        fraction[i] = u - cell[i];
      }
      return new Axis(at, cell, fraction);
    }

    /**
     * The box's edges and the centres strictly between, leaving out centres nearer to an edge than
     * the grid resolves.
     */
    private static double[] breaks(double min, double size, int cells, double from, double to) {
      double[] breaks = new double[cells + 2];
      int n = 0;
      breaks[n++] = from;
      for (int i = 0; i < cells; i++) {
        double centre = min + (i + 0.5) * size;
        if (centre > from + 1e-6 && centre < to - 1e-6) {
          breaks[n++] = centre;
        }
      }
      breaks[n++] = to;
      return Arrays.copyOf(breaks, n);
    }

    /** Places at most the spacing apart, the breaks among them. */
    private static double[] between(double[] breaks) {
      int n = breaks.length;
      double[] at = new double[n];
      int used = 0;
      for (int i = 0; i + 1 < n; i++) {
        int parts = Math.max(1, (int) Math.ceil((breaks[i + 1] - breaks[i]) / SPACING_MM - 1e-9));
        if (used + parts + 1 > at.length) {
          at = Arrays.copyOf(at, Math.max(at.length * 2, used + parts + n - i));
        }
        for (int k = 0; k < parts; k++) {
          at[used++] = k == 0 ? breaks[i] : breaks[i] + (breaks[i + 1] - breaks[i]) * k / parts;
        }
      }
      at = Arrays.copyOf(at, used + 1);
      at[used] = breaks[n - 1];
      return at;
    }
  }
}
