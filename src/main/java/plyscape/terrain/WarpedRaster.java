package plyscape.terrain;

import java.io.IOException;
import java.util.List;
import java.util.OptionalInt;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Turn;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.PlaneMap;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.BilinearSampler;
import plyscape.terrain.raster.Raster;

/**
 * A raster resampled (bilinear between cell centres) onto square, axis-parallel cells of a metric
 * CRS, which are as large as makes the way from the raster's first to its last corner as many cells
 * long as in the raster, and begin in the north-west corner. The extent is the bounding box of the
 * raster's outer edges on the ground; cells in its corners that the raster doesn't reach take the
 * value of the raster's nearest cell. A cell whose centre falls into a void cell is void; next to
 * voids the weights of the others are made up to one.
 */
final class WarpedRaster implements GroundRaster {

  /**
   * Points along each edge when its image is bounded: the sagitta of an edge falls with the square
   * of their number.
   */
  private static final int EDGE_STEPS = 256;

  private static final int CELLS_AT_ONCE = 1 << 20;

  private final Raster raster;
  private final GroundCrs crs;
  private final PlaneMap toGround;
  private final PlaneMap fromGround;
  private final CellPositions positions;
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
    this.toGround = toGround;
    this.fromGround = fromGround;
    this.extent = bounds(edge(raster), toGround, place);
    double cell = cellSize(raster, toGround, place);
    int columns = (int) Math.max(1, Math.ceil(extent.width() / cell - 1e-9));
    int rows = (int) Math.max(1, Math.ceil(extent.height() / cell - 1e-9));
    this.frame =
        new CellFrame(extent.minX(), extent.maxY() - rows * cell, cell, cell, columns, rows);
    this.positions = new CellPositions(frame, fromGround, raster.toGround().inverse());
  }

  @Override
  public OptionalInt voidsOfFile(Box ground) throws IOException {
    Affine a = raster.toGround();
    int count = 0;
    for (int row = 0; row < raster.rows(); row += raster.rowsAtOnce()) {
      int high = Math.min(raster.rowsAtOnce(), raster.rows() - row);
      double[] values = raster.read(0, row, raster.columns(), high);
      double[] xy = new double[2 * values.length];
      int n = 0;
      for (int i = 0; i < values.length; i++) {
        if (Double.isNaN(values[i])) {
          double column = i % raster.columns() + 0.5;
          double r = row + i / raster.columns() + 0.5;
          xy[n++] = a.x(column, r);
          xy[n++] = a.y(column, r);
        }
      }
      toGround.map(xy, n / 2);
      for (int i = 0; i < n; i += 2) {
        count += ground.contains(xy[i], xy[i + 1]) ? 1 : 0;
      }
    }
    return OptionalInt.of(count);
  }

  private static double cellSize(Raster raster, PlaneMap toGround, Place place) {
    Affine a = raster.toGround();
    double[] xy = {
      a.x(0, 0),
      a.y(0, 0),
      a.x(raster.columns(), raster.rows()),
      a.y(raster.columns(), raster.rows())
    };
    toGround.map(xy, 2);
    double cell =
        Math.hypot(xy[2] - xy[0], xy[3] - xy[1]) / Math.hypot(raster.columns(), raster.rows());
    if (!(cell > 0) || !Double.isFinite(cell)) {
      throw new InputFault(
          place, "it can't be mapped to the ground CRS", "name another CRS or crop");
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
    if (!(maxX > minX)
        || !(maxY > minY)
        || !Double.isFinite(maxX - minX)
        || !Double.isFinite(maxY - minY)) {
      throw new InputFault(
          place, "it can't be mapped to the ground CRS", "name another CRS or crop");
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
  public GroundRaster turned(Turn turn, Place place) {
    return new WarpedRaster(
        raster,
        crs,
        (xy, count) -> {
          toGround.map(xy, count);
          turn.map(xy, count);
        },
        (xy, count) -> {
          turn.back(xy, count);
          fromGround.map(xy, count);
        },
        place);
  }

  @Override
  public boolean covers(double x, double y) {
    double[] xy = {x, y};
    fromGround.map(xy, 1);
    Affine cells = raster.toGround().inverse();
    double column = cells.x(xy[0], xy[1]);
    double row = cells.y(xy[0], xy[1]);
    return column >= 0 && row >= 0 && column <= raster.columns() && row <= raster.rows();
  }

  @Override
  public List<Window> strips(Window w) {
    return GroundRaster.evenStrips(w, Math.max(1, CELLS_AT_ONCE / w.columns()));
  }

  @Override
  public double[] read(Window w) throws IOException {
    double[] at = positions.of(w);
    for (int i = 0; i < at.length; i += 2) {
      if (Double.isNaN(at[i])) {
        // A place beyond the projection lies far outside the raster: any edge cell does.
        at[i] = 0;
        at[i + 1] = 0;
      }
    }
    return BilinearSampler.sample(raster, at);
  }
}
