package plyscape.toolpath.face;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.region.FaceField;
import plyscape.region.RegionRaster;

/**
 * Depths that are wanted and depths that are cut, at the nodes of a fine lattice over the carved
 * area, with a margin of uncut panel around it. Lines run along its rows; when they are to run
 * along Y, the lattice is turned so that U is Y and V is X. Nodes where roughing left wood above
 * its own depth (corners that no flat cutter fits into) are marked: finishing leaves them alone.
 */
final class FaceLattice {

  /** Less than this above the depth of roughing isn't a rest. */
  private static final double REST_MM = 0.02;

  /** Side of a block of nodes whose least values are kept. */
  static final int BLOCK = 16;

  final boolean turned;
  final double minU;
  final double minV;
  final double stepMm;
  final int columns;
  final int rows;

  /** Nodes from the lattice's edge to the carved area. */
  final int margin;

  /** Columns and rows of the carved area. */
  final int endColumn;

  final int endRow;
  final float[] target;
  final float[] stock;
  final boolean[] rest;

  /** Places of faces between the nodes that those don't stand for: U, V and depth each. */
  final double[] peaks;

  final int blockColumns;

  /**
   * @param steep mm a mm: faces that are steeper are looked at between the nodes too
   */
  FaceLattice(FaceTask task, boolean turned, double stepMm, int margin, double steep) {
    Box carved = task.carved();
    this.turned = turned;
    this.stepMm = stepMm;
    this.margin = margin;
    double width = turned ? carved.height() : carved.width();
    double height = turned ? carved.width() : carved.height();
    minU = (turned ? carved.minY() : carved.minX()) - margin * stepMm;
    minV = (turned ? carved.minX() : carved.minY()) - margin * stepMm;
    endColumn = margin + (int) Math.floor(width / stepMm + 1e-9) + 1;
    endRow = margin + (int) Math.floor(height / stepMm + 1e-9) + 1;
    columns = endColumn + margin;
    rows = endRow + margin;
    target = new float[Math.multiplyExact(columns, rows)];
    stock = new float[target.length];
    rest = new boolean[target.length];
    blockColumns = (columns + BLOCK - 1) / BLOCK;
    int[] region = targets(task);
    peaks =
        DoubleStream.concat(
                Arrays.stream(FacePeaks.of(this, region, task)),
                Arrays.stream(FaceCliffs.of(this, region, task, steep)))
            .toArray();
  }

  /** Fills in what is wanted and what stands; gives the region of each node. */
  private int[] targets(FaceTask task) {
    FaceField faces = task.faces();
    double half = stepMm / 2;
    CellFrame frame =
        turned
            ? new CellFrame(minV - half, minU - half, stepMm, stepMm, rows, columns)
            : new CellFrame(minU - half, minV - half, stepMm, stepMm, columns, rows);
    int[] region = RegionRaster.of(faces.polygons(), frame);
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < columns; column++) {
                int at = region[turned ? column * rows + row : row * columns + column];
                double x = x(u(column), v(row));
                double y = y(u(column), v(row));
                double flat = at == RegionRaster.NONE ? 0 : faces.depthMm(at, x, y);
                target[row * columns + column] = (float) task.wantedMm(x, y, flat);
                stock[row * columns + column] = (float) task.panel().belowMm(x, y, 0);
              }
            });
    return region;
  }

  /**
   * Marks the rests of roughing: what stands above the depth that it should have made, and, on a
   * panel that slopes, the floors of flat cutters, which no round end makes better.
   */
  void markRests(FaceTask task) {
    FaceField faces = task.faces();
    double rim = task.panel().rimMm();
    double half = stepMm / 2;
    CellFrame frame =
        turned
            ? new CellFrame(minV - half, minU - half, stepMm, stepMm, rows, columns)
            : new CellFrame(minU - half, minV - half, stepMm, stepMm, columns, rows);
    int[] region = RegionRaster.of(faces.polygons(), frame);
    double[] rough = faces.roughMm();
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < columns; column++) {
                int at = region[turned ? column * rows + row : row * columns + column];
                int node = row * columns + column;
                if (at != RegionRaster.NONE) {
                  double x = x(u(column), v(row));
                  double y = y(u(column), v(row));
                  double made = task.panel().belowMm(x, y, rough[at]) - REST_MM - 2 * rim;
                  rest[node] = stock[node] < made || rim > 0 && faces.faces().get(at).flat();
                }
              }
            });
  }

  double u(int column) {
    return minU + column * stepMm;
  }

  double v(int row) {
    return minV + row * stepMm;
  }

  double x(double u, double v) {
    return turned ? v : u;
  }

  double y(double u, double v) {
    return turned ? u : v;
  }

  int blockOf(int column, int row) {
    return row / BLOCK * blockColumns + column / BLOCK;
  }

  /**
   * Least value of a field around each block: in the block itself and as many nodes around it as
   * said.
   */
  float[] leastAround(float[] field, int around) {
    int blockRows = (rows + BLOCK - 1) / BLOCK;
    float[] own = new float[blockColumns * blockRows];
    IntStream.range(0, blockRows)
        .parallel()
        .forEach(
            blockRow -> {
              for (int b = blockRow * blockColumns; b < (blockRow + 1) * blockColumns; b++) {
                own[b] = Float.POSITIVE_INFINITY;
              }
              int end = Math.min(rows, (blockRow + 1) * BLOCK);
              for (int row = blockRow * BLOCK; row < end; row++) {
                for (int column = 0; column < columns; column++) {
                  int b = blockRow * blockColumns + column / BLOCK;
                  own[b] = Math.min(own[b], field[row * columns + column]);
                }
              }
            });
    int reach = (around + BLOCK - 1) / BLOCK;
    float[] out = new float[own.length];
    IntStream.range(0, blockRows)
        .parallel()
        .forEach(
            blockRow -> {
              for (int column = 0; column < blockColumns; column++) {
                float least = Float.POSITIVE_INFINITY;
                for (int r = Math.max(0, blockRow - reach);
                    r <= Math.min(blockRows - 1, blockRow + reach);
                    r++) {
                  for (int c = Math.max(0, column - reach);
                      c <= Math.min(blockColumns - 1, column + reach);
                      c++) {
                    least = Math.min(least, own[r * blockColumns + c]);
                  }
                }
                out[blockRow * blockColumns + column] = least;
              }
            });
    return out;
  }

  /** Blocks in or around which some wood is to be taken off: more than a tolerance, rests apart. */
  boolean[] workAround(double toleranceMm, int around) {
    float[] missing = new float[target.length];
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            row -> {
              for (int i = row * columns; i < (row + 1) * columns; i++) {
                missing[i] = rest[i] ? 0 : stock[i] - target[i];
              }
            });
    float[] least = leastAround(missing, around);
    boolean[] work = new boolean[least.length];
    for (int b = 0; b < work.length; b++) {
      work[b] = least[b] < -toleranceMm;
    }
    return work;
  }

  /** Blocks in or around which the stock isn't as it was before. */
  boolean[] changedAround(float[] before, int around) {
    float[] change = new float[stock.length];
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            row -> {
              for (int i = row * columns; i < (row + 1) * columns; i++) {
                change[i] = stock[i] == before[i] ? 0 : -1;
              }
            });
    float[] least = leastAround(change, around);
    boolean[] changed = new boolean[least.length];
    for (int b = 0; b < changed.length; b++) {
      changed[b] = least[b] < 0;
    }
    return changed;
  }
}
