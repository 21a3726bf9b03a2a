package plyscape.toolpath.face;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.region.RegionRaster;

/**
 * Places where a face stands higher than the nodes of a {@link FaceLattice} around them show: the
 * sharp ridges and peaks of rough ground. Looked for only where the nodes bend, so that smooth
 * ground costs nothing.
 */
final class FacePeaks {

  /** Nodes that bend by less hide no more than a quarter to a half of it between them, mm. */
  private static final double BEND_MM = 0.004;

  /** Higher than the nodes show by less isn't a peak, mm. */
  private static final double LEAST_MM = 0.001;

  /** A square of nodes is looked at in so many rows and columns. */
  private static final int PARTS = 6;

  private final FaceLattice lattice;
  private final int[] region;
  private final FaceTask task;

  private FacePeaks(FaceLattice lattice, int[] region, FaceTask task) {
    this.lattice = lattice;
    this.region = region;
    this.task = task;
  }

  /**
   * The places in order, U, V and depth each.
   *
   * @param region of each node, in the order of a raster of the panel
   */
  static double[] of(FaceLattice lattice, int[] region, FaceTask task) {
    FacePeaks peaks = new FacePeaks(lattice, region, task);
    List<double[]> rows =
        IntStream.range(1, lattice.rows - 2).parallel().mapToObj(peaks::row).toList();
    return rows.stream().flatMapToDouble(Arrays::stream).toArray();
  }

  private double[] row(int row) {
    FacePoints points = new FacePoints();
    for (int column = 1; column < lattice.columns - 2; column++) {
      if (bends(column, row)) {
        square(column, row, points);
      }
    }
    return points.values();
  }

  private boolean bends(int column, int row) {
    int node = row * lattice.columns + column;
    int up = lattice.columns;
    return bend(node, 1) + bend(node + 1, 1) > BEND_MM
        || bend(node, up) + bend(node + up, up) > BEND_MM
        || bend(node + up, 1) + bend(node + up + 1, 1) > BEND_MM
        || bend(node + 1, up) + bend(node + 1 + up, up) > BEND_MM;
  }

  /** By how much a node stands over its neighbours on both sides, mm, at least 0. */
  private double bend(int node, int step) {
    float[] z = lattice.target;
    return Math.max(0, z[node - step] + z[node + step] - 2 * z[node]);
  }

  private int regionAt(int column, int row) {
    return region[lattice.turned ? column * lattice.rows + row : row * lattice.columns + column];
  }

  /** Peaks of all faces that have a corner of a square. */
  private void square(int column, int row, FacePoints points) {
    int[] corners = {
      regionAt(column, row),
      regionAt(column + 1, row),
      regionAt(column, row + 1),
      regionAt(column + 1, row + 1)
    };
    for (int c = 0; c < corners.length; c++) {
      boolean again = false;
      for (int other = 0; other < c; other++) {
        again |= corners[other] == corners[c];
      }
      if (!again
          && corners[c] != RegionRaster.NONE
          && !task.faces().faces().get(corners[c]).flat()) {
        square(column, row, corners, corners[c], points);
      }
    }
  }

  /** Adds the highest place of each row and each column of a square in a face, if it is a peak. */
  private void square(int column, int row, int[] corners, int at, FacePoints points) {
    int n = PARTS + 1;
    double[] depth = new double[n * n];
    for (int k = 0; k < depth.length; k++) {
      double u = lattice.u(column) + lattice.stepMm * (k % n) / PARTS;
      double v = lattice.v(row) + lattice.stepMm * (k / n) / PARTS;
      double x = lattice.x(u, v);
      double y = lattice.y(u, v);
      depth[k] = task.wantedMm(x, y, task.faces().depthMm(at, x, y));
    }
    double[] over = new double[n * n];
    for (int k = 0; k < over.length; k++) {
      double a = (double) (k % n) / PARTS;
      double b = (double) (k / n) / PARTS;
      double south = (1 - a) * depth[0] + a * depth[PARTS];
      double north = (1 - a) * depth[n * PARTS] + a * depth[n * n - 1];
      boolean own = corners[(2 * (k % n) > PARTS ? 1 : 0) + (2 * (k / n) > PARTS ? 2 : 0)] == at;
      over[k] = own ? (1 - b) * south + b * north - depth[k] : 0;
    }
    for (int k : highest(over)) {
      points.add(
          lattice.u(column) + lattice.stepMm * (k % n) / PARTS,
          lattice.v(row) + lattice.stepMm * (k / n) / PARTS,
          depth[k]);
    }
  }

  private static int[] highest(double[] over) {
    int n = PARTS + 1;
    boolean[] keep = new boolean[over.length];
    for (int a = 0; a < n; a++) {
      int inRow = a * n;
      int inColumn = a;
      for (int b = 1; b < n; b++) {
        inRow = over[a * n + b] > over[inRow] ? a * n + b : inRow;
        inColumn = over[b * n + a] > over[inColumn] ? b * n + a : inColumn;
      }
      keep[inRow] |= over[inRow] > LEAST_MM;
      keep[inColumn] |= over[inColumn] > LEAST_MM;
    }
    return IntStream.range(0, over.length).filter(k -> keep[k]).toArray();
  }
}
