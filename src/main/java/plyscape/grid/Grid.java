package plyscape.grid;

/**
 * Values at the cell centres of a frame, row by row from the south. The array is shared, not
 * copied; NaN is no value.
 */
public record Grid(CellFrame frame, double[] values) {

  /** Checks that there is one value a cell. */
  public Grid {
    if (values.length != frame.size()) {
      throw new IllegalArgumentException(values.length + " values for " + frame.size() + " cells");
    }
  }

  /** Value of a cell. */
  public double at(int column, int row) {
    return values[row * frame.columns() + column];
  }

  /**
   * Bilinear value between cell centres at a point in the frame's units; beyond the outermost
   * centres the value of the edge is held. Exact for fields linear in x and y away from the edge.
   */
  public double bilinear(double x, double y) {
    double u = clamp((x - frame.minX()) / frame.cellX() - 0.5, frame.columns() - 1);
    double v = clamp((y - frame.minY()) / frame.cellY() - 0.5, frame.rows() - 1);
    int c = Math.min((int) u, Math.max(frame.columns() - 2, 0));
    int r = Math.min((int) v, Math.max(frame.rows() - 2, 0));
    int c1 = Math.min(c + 1, frame.columns() - 1);
    int r1 = Math.min(r + 1, frame.rows() - 1);
    double fx = u - c;
    double fy = v - r;
    double south = at(c, r) + fx * (at(c1, r) - at(c, r));
    double north = at(c, r1) + fx * (at(c1, r1) - at(c, r1));
    return south + fy * (north - south);
  }

  private static double clamp(double value, int max) {
    return Math.min(Math.max(value, 0), max);
  }
}
