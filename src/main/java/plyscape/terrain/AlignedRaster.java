package plyscape.terrain;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import plyscape.fault.Place;
import plyscape.grid.CellFrame;
import plyscape.grid.Turn;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;

/**
 * A raster whose rows and columns run along the axes of its own projected (or absent) CRS: cells
 * are taken as they are, only turned so that row 0 is the south and column 0 the west.
 */
final class AlignedRaster implements GroundRaster {

  private final Raster raster;
  private final GroundCrs crs;
  private final CellFrame frame;

  /**
   * Over a raster.
   *
   * @param crs the raster's, its unit measured
   */
  AlignedRaster(Raster raster, GroundCrs crs) {
    this.raster = raster;
    this.crs = crs;
    Affine a = raster.toGround();
    double cellX = Math.abs(a.xCol());
    double cellY = Math.abs(a.yRow());
    double minX = a.xCol() > 0 ? a.x0() : a.x0() - cellX * raster.columns();
    double minY = a.yRow() > 0 ? a.y0() : a.y0() - cellY * raster.rows();
    this.frame = new CellFrame(minX, minY, cellX, cellY, raster.columns(), raster.rows());
  }

  @Override
  public CellFrame frame() {
    return frame;
  }

  @Override
  public GroundCrs crs() {
    return crs;
  }

  @Override
  public GroundRaster turned(Turn turn, Place place) {
    return new WarpedRaster(raster, crs, turn::map, turn::back, place);
  }

  @Override
  public boolean covers(double x, double y) {
    return frame.box().contains(x, y);
  }

  /** Cuts at the bounds of the file's tiles or strips. */
  @Override
  public List<Window> strips(Window w) {
    int step = raster.rowsAtOnce();
    boolean flipY = raster.toGround().yRow() < 0;
    List<Window> out = new ArrayList<>();
    int row = w.row();
    while (row < w.row() + w.rows()) {
      int next =
          flipY ? raster.rows() - (raster.rows() - 1 - row) / step * step : (row / step + 1) * step;
      int end = Math.min(next, w.row() + w.rows());
      out.add(new Window(w.column(), row, w.columns(), end - row));
      row = end;
    }
    return out;
  }

  @Override
  public double[] read(Window w) throws IOException {
    boolean flipX = raster.toGround().xCol() < 0;
    boolean flipY = raster.toGround().yRow() < 0;
    int column = flipX ? raster.columns() - w.column() - w.columns() : w.column();
    int row = flipY ? raster.rows() - w.row() - w.rows() : w.row();
    double[] values = raster.read(column, row, w.columns(), w.rows());
    if (flipY) {
      turnRows(values, w.columns(), w.rows());
    }
    if (flipX) {
      turnColumns(values, w.columns(), w.rows());
    }
    return values;
  }

  private static void turnRows(double[] values, int columns, int rows) {
    double[] spare = new double[columns];
    for (int south = 0, north = rows - 1; south < north; south++, north--) {
      System.arraycopy(values, south * columns, spare, 0, columns);
      System.arraycopy(values, north * columns, values, south * columns, columns);
      System.arraycopy(spare, 0, values, north * columns, columns);
    }
  }

  private static void turnColumns(double[] values, int columns, int rows) {
    for (int row = 0; row < rows; row++) {
      for (int west = row * columns, east = west + columns - 1; west < east; west++, east--) {
        double value = values[west];
        values[west] = values[east];
        values[east] = value;
      }
    }
  }
}
