package plyscape.terrain;

import java.io.IOException;

/**
 * A part of another raster, or the same raster with another place, CRS or unit than its file says. Values come out in
 * metres.
 *
 * @param base the raster
 * @param column first column of the part
 * @param row first row of the part
 * @param columns count
 * @param rows count
 * @param toGround places the part, (0, 0) being its own outer corner
 * @param crs CRS to take it in
 * @param factor metres in one unit of the base's values
 */
record RasterView(
    Raster base, int column, int row, int columns, int rows, Affine toGround, GroundCrs crs, double factor)
    implements Raster {

  /** The whole of a raster, in metres by what it says itself. */
  static RasterView of(Raster base) {
    return new RasterView(
        base, 0, 0, base.columns(), base.rows(), base.toGround(), base.crs(), base.metresPerValue());
  }

  /** The same with another place. */
  RasterView placedAt(Affine other) {
    return new RasterView(base, column, row, columns, rows, other, crs, factor);
  }

  /** The same with another CRS. */
  RasterView in(GroundCrs other) {
    return new RasterView(base, column, row, columns, rows, toGround, other, factor);
  }

  /** The same with another unit. */
  RasterView withUnit(double metres) {
    return new RasterView(base, column, row, columns, rows, toGround, crs, metres);
  }

  /** A part, counted within this one. */
  RasterView part(int firstColumn, int firstRow, int wide, int high) {
    return new RasterView(
        base, column + firstColumn, row + firstRow, wide, high, toGround.shifted(firstColumn, firstRow), crs, factor);
  }

  @Override
  public String name() {
    return base.name();
  }

  @Override
  public double[] read(int firstColumn, int firstRow, int wide, int high) throws IOException {
    double[] values = base.read(column + firstColumn, row + firstRow, wide, high);
    if (factor != 1) {
      for (int i = 0; i < values.length; i++) {
        values[i] *= factor;
      }
    }
    return values;
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
