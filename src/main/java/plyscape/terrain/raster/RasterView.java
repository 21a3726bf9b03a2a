package plyscape.terrain.raster;

import java.io.IOException;
import plyscape.terrain.crs.GroundCrs;

/**
 * A part of another raster, or the same raster with another place, CRS or unit than its file says.
 * Values come out in metres.
 *
 * @param base the raster
 * @param column first column of the part
 * @param row first row of the part
 * @param columns count
 * @param rows count
 * @param toGround places the part, (0, 0) being its own outer corner
 * @param crs CRS to take it in
 * @param factor metres in one unit of the base's values
 * @param nodata value of the base that means none, NaN for none such
 */
public record RasterView(
    Raster base,
    int column,
    int row,
    int columns,
    int rows,
    Affine toGround,
    GroundCrs crs,
    double factor,
    double nodata)
    implements Raster {

  /**
   * Values beyond this are no elevations in any unit, but marks of a void that the file forgot to
   * name.
   */
  private static final double MOST = 1e9;

  /** The whole of a raster, in metres by what it says itself. */
  public static RasterView of(Raster base) {
    return new RasterView(
        base,
        0,
        0,
        base.columns(),
        base.rows(),
        base.toGround(),
        base.crs(),
        base.metresPerValue(),
        Double.NaN);
  }

  /** The same with another place. */
  public RasterView placedAt(Affine other) {
    return new RasterView(base, column, row, columns, rows, other, crs, factor, nodata);
  }

  /** The same with another CRS. */
  public RasterView in(GroundCrs other) {
    return new RasterView(base, column, row, columns, rows, toGround, other, factor, nodata);
  }

  /** The same with another unit. */
  public RasterView withUnit(double metres) {
    return new RasterView(base, column, row, columns, rows, toGround, crs, metres, nodata);
  }

  /** The same with a value that means none. */
  public RasterView without(double value) {
    return new RasterView(base, column, row, columns, rows, toGround, crs, factor, value);
  }

  /** A part, counted within this one. */
  public RasterView part(int firstColumn, int firstRow, int wide, int high) {
    return new RasterView(
        base,
        column + firstColumn,
        row + firstRow,
        wide,
        high,
        toGround.shifted(firstColumn, firstRow),
        crs,
        factor,
        nodata);
  }

  @Override
  public String name() {
    return base.name();
  }

  @Override
  public double[] read(int firstColumn, int firstRow, int wide, int high) throws IOException {
    double[] values = base.read(column + firstColumn, row + firstRow, wide, high);
    if (factor == 1 && Double.isNaN(nodata)) {
      for (int i = 0; i < values.length; i++) {
        values[i] = Math.abs(values[i]) > MOST ? Double.NaN : values[i];
      }
      return values;
    }
    for (int i = 0; i < values.length; i++) {
      double value = values[i];
      boolean none = value == nodata || (float) value == (float) nodata || Math.abs(value) > MOST;
      values[i] = none ? Double.NaN : value * factor;
    }
    return values;
  }

  @Override
  public boolean unitStated() {
    return base.unitStated();
  }

  @Override
  public int rowsAtOnce() {
    return base.rowsAtOnce();
  }

  @Override
  public void close() throws IOException {
    base.close();
  }
}
