package plyscape.terrain;

import plyscape.grid.CellFrame;
import plyscape.terrain.GroundRaster.Window;
import plyscape.terrain.crs.PlaneMap;
import plyscape.terrain.raster.Affine;

/**
 * Where the centres of ground cells lie in a raster, in its columns and rows. Map projections bend
 * so gently that in blocks of 32 x 32 cells a quadric through nine mapped points stands for them
 * (biquadratic Lagrange interpolation): the error is below a thousandth of a cell, which each block
 * is tested for at two more points; for cells of 30 m it is below a millionth. Blocks that fail, or
 * that touch a place beyond the projection, are mapped cell by cell. Blocks count from the frame's
 * corner, so that a cell's position doesn't depend on the window.
 */
final class CellPositions {

  private static final int SIDE = 32;
  private static final int NODES = 3;

  /** Nine nodes and two points for the test. */
  private static final int POINTS = NODES * NODES + 2;

  /**
   * Test points within a block, as shares of its side: where the error of the quadric is largest.
   */
  private static final double[] TESTED = {0.2, 0.8};

  /** At the test points: elsewhere in the block the error may be some times as large. */
  private static final double MOST_ERROR_CELLS = 1e-4;

  /** Weights of the nodes for each cell of a block's side. */
  private static final double[][] WEIGHTS = new double[SIDE][];

  static {
    for (int i = 0; i < SIDE; i++) {
      WEIGHTS[i] = weights(i / (SIDE - 1.0));
    }
  }

  private final CellFrame frame;
  private final PlaneMap fromGround;
  private final Affine toCell;

  CellPositions(CellFrame frame, PlaneMap fromGround, Affine toCell) {
    this.frame = frame;
    this.fromGround = fromGround;
    this.toCell = toCell;
  }

  private static double[] weights(double u) {
    return new double[] {2 * (u - 0.5) * (u - 1), 4 * u * (1 - u), 2 * u * (u - 0.5)};
  }

  /** Column and row of each cell of a window, pairs; the column is NaN beyond the projection. */
  double[] of(Window w) {
    double[] out = new double[Math.multiplyExact(2, Math.multiplyExact(w.columns(), w.rows()))];
    int c0 = w.column() / SIDE;
    int c1 = (w.column() + w.columns() - 1) / SIDE;
    int r0 = w.row() / SIDE;
    int r1 = (w.row() + w.rows() - 1) / SIDE;
    int across = c1 - c0 + 1;
    double[] points = new double[2 * POINTS * across];
    for (int r = r0; r <= r1; r++) {
      for (int c = 0; c < across; c++) {
        lay((c0 + c) * SIDE, r * SIDE, points, 2 * POINTS * c);
      }
      map(points, points.length / 2);
      for (int c = 0; c < across; c++) {
        fill((c0 + c) * SIDE, r * SIDE, points, 2 * POINTS * c, w, out);
      }
    }
    return out;
  }

  /** Lays the points of the block that begins at a column and row. */
  private void lay(int column, int row, double[] points, int at) {
    int to = at;
    for (int i = 0; i < POINTS; i++) {
      boolean node = i < NODES * NODES;
      double u = node ? i % NODES / 2.0 : TESTED[i - NODES * NODES];
      double v = node ? i / NODES / 2.0 : TESTED[i - NODES * NODES];
      points[to++] = frame.minX() + (column + 0.5 + u * (SIDE - 1)) * frame.cellX();
      points[to++] = frame.minY() + (row + 0.5 + v * (SIDE - 1)) * frame.cellY();
    }
  }

  private void map(double[] xy, int count) {
    fromGround.map(xy, count);
    for (int i = 0; i < 2 * count; i += 2) {
      double x = xy[i];
      xy[i] = toCell.x(x, xy[i + 1]);
      xy[i + 1] = toCell.y(x, xy[i + 1]);
    }
  }

  private void fill(int column, int row, double[] points, int at, Window w, double[] out) {
    int from = Math.max(w.column(), column);
    int to = Math.min(w.column() + w.columns(), column + SIDE);
    int last = Math.min(w.row() + w.rows(), row + SIDE);
    boolean smooth = smooth(points, at);
    double[] x = new double[NODES];
    double[] y = new double[NODES];
    for (int r = Math.max(w.row(), row); r < last; r++) {
      int here = 2 * ((r - w.row()) * w.columns() + from - w.column());
      if (!smooth) {
        exact(r, from, to, out, here);
        continue;
      }
      along(points, at, WEIGHTS[r - row], x, y);
      for (int c = from; c < to; c++) {
        double[] k = WEIGHTS[c - column];
        out[here++] = k[0] * x[0] + k[1] * x[1] + k[2] * x[2];
        out[here++] = k[0] * y[0] + k[1] * y[1] + k[2] * y[2];
      }
    }
  }

  /** Brings the rows of nodes together at one height. */
  private static void along(double[] points, int at, double[] k, double[] x, double[] y) {
    for (int j = 0; j < NODES; j++) {
      int a = at + 2 * j;
      x[j] = k[0] * points[a] + k[1] * points[a + 2 * NODES] + k[2] * points[a + 4 * NODES];
      y[j] =
          k[0] * points[a + 1]
              + k[1] * points[a + 1 + 2 * NODES]
              + k[2] * points[a + 1 + 4 * NODES];
    }
  }

  private static boolean smooth(double[] points, int at) {
    double[] x = new double[NODES];
    double[] y = new double[NODES];
    for (int i = 0; i < TESTED.length; i++) {
      double[] k = weights(TESTED[i]);
      along(points, at, k, x, y);
      int tested = at + 2 * (NODES * NODES + i);
      double dx = k[0] * x[0] + k[1] * x[1] + k[2] * x[2] - points[tested];
      double dy = k[0] * y[0] + k[1] * y[1] + k[2] * y[2] - points[tested + 1];
      // NaN fails, too.
      if (!(Math.abs(dx) + Math.abs(dy) < MOST_ERROR_CELLS)) {
        return false;
      }
    }
    return true;
  }

  private void exact(int row, int from, int to, double[] out, int at) {
    double[] xy = new double[2 * (to - from)];
    for (int c = from; c < to; c++) {
      xy[2 * (c - from)] = frame.centreX(c);
      xy[2 * (c - from) + 1] = frame.centreY(row);
    }
    map(xy, to - from);
    System.arraycopy(xy, 0, out, at, xy.length);
  }
}
