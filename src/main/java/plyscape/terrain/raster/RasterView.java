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
 * @param head of the part, as it is to be taken
 * @param factor metres in one unit of the base's values
 * @param nodata value of the base that means none, NaN for none such
 */
public record RasterView(
    Raster base, int column, int row, RasterHead head, double factor, double nodata)
    implements Raster {

  /**
   * Values beyond this are no elevations in any unit, but marks of a void that the file forgot to
   * name.
   */
  private static final double MOST = 1e9;

  /** The whole of a raster, in metres by what it says itself. */
  public static RasterView of(Raster base) {
    return new RasterView(base, 0, 0, base.head(), base.metresPerValue(), Double.NaN);
  }

  /** The same with another place. */
  public RasterView placedAt(Affine other) {
    return new RasterView(base, column, row, head.placedAt(other), factor, nodata);
  }

  /** The same with another CRS. */
  public RasterView in(GroundCrs other) {
    return new RasterView(base, column, row, head.in(other), factor, nodata);
  }

  /** The same with another unit. */
  public RasterView withUnit(double metres) {
    return new RasterView(base, column, row, head, metres, nodata);
  }

  /** The same with a value that means none. */
  public RasterView without(double value) {
    return new RasterView(base, column, row, head, factor, value);
  }

  /** A part, counted within this one. */
  public RasterView part(int firstColumn, int firstRow, int wide, int high) {
    RasterHead part = head.part(firstColumn, firstRow, wide, high);
    return new RasterView(base, column + firstColumn, row + firstRow, part, factor, nodata);
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
