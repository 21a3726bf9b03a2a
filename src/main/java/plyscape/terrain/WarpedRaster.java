package plyscape.terrain;

import java.io.IOException;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;

/**
 * A raster resampled (bilinear between cell centres) onto square, axis-parallel cells of a metric CRS, which are as large
 * as makes the way from the raster's first to its last corner as many cells long as in the raster, and begin in the
 * north-west corner. The extent is the bounding box of the raster's outer edges on the ground; cells in its corners that
 * the raster doesn't reach take the value of the raster's nearest cell. A cell whose centre falls into a void cell is
 * void; next to voids the weights of the others are made up to one.
 */
final class WarpedRaster implements GroundRaster {

  /** Points along each edge when its image is bounded: the sagitta of an edge falls with the square of their number. */
  private static final int EDGE_STEPS = 256;

  private final Raster raster;
  private final GroundCrs crs;
  private final PlaneMap fromGround;
  private final Affine toCell;
  private final Box extent;
  private final CellFrame frame;

  /**
   * Lays out the cells.
   *
   * @param raster any raster with a CRS
   * @param crs the ground CRS
   * @param toGround from the raster's CRS to the ground's
   * @param fromGround the way back
   * @param place blamed when the raster doesn't fit the ground CRS
   */
  WarpedRaster(Raster raster, GroundCrs crs, PlaneMap toGround, PlaneMap fromGround, Place place) {
    this.raster = raster;
    this.crs = crs;
    this.fromGround = fromGround;
    this.toCell = raster.toGround().inverse();
    this.extent = bounds(edge(raster), toGround, place);
    double cell = cellSize(raster, toGround, place);
    int columns = (int) Math.max(1, Math.ceil(extent.width() / cell - 1e-9));
    int rows = (int) Math.max(1, Math.ceil(extent.height() / cell - 1e-9));
    this.frame = new CellFrame(extent.minX(), extent.maxY() - rows * cell, cell, cell, columns, rows);
  }

  private static double cellSize(Raster raster, PlaneMap toGround, Place place) {
    Affine a = raster.toGround();
    double[] xy = {a.x(0, 0), a.y(0, 0), a.x(raster.columns(), raster.rows()), a.y(raster.columns(), raster.rows())};
    toGround.map(xy, 2);
    double cell = Math.hypot(xy[2] - xy[0], xy[3] - xy[1]) / Math.hypot(raster.columns(), raster.rows());
    if (!(cell > 0) || !Double.isFinite(cell)) {
      throw new InputFault(place, "it can't be mapped to the ground CRS", "name another CRS or crop");
    }
    return cell;
  }

  private static double[] edge(Raster raster) {
    double[] xy = new double[8 * EDGE_STEPS];
    Affine a = raster.toGround();
    for (int i = 0; i < EDGE_STEPS; i++) {
      double t = (double) i / EDGE_STEPS;
      double[][] at = {{t, 0}, {1, t}, {1 - t, 1}, {0, 1 - t}};
      for (int side = 0; side < 4; side++) {
        double col = at[side][0] * raster.columns();
        double row = at[side][1] * raster.rows();
        xy[2 * (side * EDGE_STEPS + i)] = a.x(col, row);
        xy[2 * (side * EDGE_STEPS + i) + 1] = a.y(col, row);
      }
    }
    return xy;
  }

  /** Bounding box of mapped points. */
  static Box bounds(double[] xy, PlaneMap map, Place place) {
    map.map(xy, xy.length / 2);
    double minX = Double.POSITIVE_INFINITY;
    double minY = minX;
    double maxX = -minX;
    double maxY = -minX;
    for (int i = 0; i < xy.length; i += 2) {
      minX = Math.min(minX, xy[i]);
      maxX = Math.max(maxX, xy[i]);
      minY = Math.min(minY, xy[i + 1]);
      maxY = Math.max(maxY, xy[i + 1]);
    }
    if (!(maxX > minX) || !(maxY > minY) || !Double.isFinite(maxX - minX) || !Double.isFinite(maxY - minY)) {
      throw new InputFault(place, "it can't be mapped to the ground CRS", "name another CRS or crop");
    }
    return new Box(minX, minY, maxX, maxY);
  }

  @Override
  public CellFrame frame() {
    return frame;
  }

  @Override
  public Box extent() {
    return extent;
  }

  @Override
  public GroundCrs crs() {
    return crs;
  }

  @Override
  public double[] read(Window w) throws IOException {
    double[] at = sourcePositions(w);
    int c0 = Integer.MAX_VALUE;
    int r0 = Integer.MAX_VALUE;
    int c1 = 0;
    int r1 = 0;
    for (int i = 0; i < at.length; i += 2) {
      c0 = Math.min(c0, (int) Math.floor(at[i]));
      c1 = Math.max(c1, (int) Math.ceil(at[i]));
      r0 = Math.min(r0, (int) Math.floor(at[i + 1]));
      r1 = Math.max(r1, (int) Math.ceil(at[i + 1]));
    }
    int wide = c1 - c0 + 1;
    double[] source = raster.read(c0, r0, wide, r1 - r0 + 1);
    double[] out = new double[w.columns() * w.rows()];
    for (int i = 0; i < out.length; i++) {
      out[i] = sample(source, wide, r1 - r0 + 1, at[2 * i] - c0, at[2 * i + 1] - r0);
    }
    return out;
  }

  /** Column and row of each cell of the window among the raster's cell centres, held within the outermost centres. */
  private double[] sourcePositions(Window w) {
    double[] xy = new double[2 * w.columns() * w.rows()];
    int i = 0;
    for (int row = 0; row < w.rows(); row++) {
      for (int column = 0; column < w.columns(); column++) {
        xy[i++] = frame.centreX(w.column() + column);
        xy[i++] = frame.centreY(w.row() + row);
      }
    }
    fromGround.map(xy, xy.length / 2);
    for (i = 0; i < xy.length; i += 2) {
      double col = toCell.x(xy[i], xy[i + 1]) - 0.5;
      double row = toCell.y(xy[i], xy[i + 1]) - 0.5;
      xy[i] = hold(col, raster.columns() - 1);
      xy[i + 1] = hold(row, raster.rows() - 1);
    }
    return xy;
  }

  /** NaN (a place beyond the projection) goes to the first cell, as such places are far outside the raster. */
  private static double hold(double value, int max) {
    return value > 0 ? Math.min(value, max) : 0;
  }

  private static double sample(double[] source, int wide, int high, double u, double v) {
    int c = (int) u;
    int r = (int) v;
    double fx = u - c;
    double fy = v - r;
    int c1 = Math.min(c + 1, wide - 1);
    int r1 = Math.min(r + 1, high - 1);
    int nearest = (fy < 0.5 ? r : r1) * wide + (fx < 0.5 ? c : c1);
    if (Double.isNaN(source[nearest])) {
      return Double.NaN;
    }
    double sum = 0;
    double weights = 0;
    for (int k = 0; k < 4; k++) {
      double weight = ((k & 1) == 0 ? 1 - fx : fx) * ((k & 2) == 0 ? 1 - fy : fy);
      double value = source[((k & 2) == 0 ? r : r1) * wide + ((k & 1) == 0 ? c : c1)];
      if (!Double.isNaN(value)) {
        sum += weight * value;
        weights += weight;
      }
    }
    return sum / weights;
  }
}
