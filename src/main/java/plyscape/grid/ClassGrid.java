package plyscape.grid;

/**
 * A window of a raster whose values are classes, such as kinds of land cover, as its file has it.
 * Immutable; the arrays are shared, not copied.
 *
 * @param name the file, for messages
 * @param crs code or WKT of its CRS, or "" when it names none
 * @param toGround x0, xCol, xRow, y0, yCol, yRow: ground X is x0 + xCol * column + xRow * row, Y
 *     likewise; (0, 0) is the outer corner of the first cell
 * @param columns count; 0 when nothing of the raster lies on the ground asked for
 * @param values row by row in the file's order; NaN is no value
 */
public record ClassGrid(
    String name, String crs, double[] toGround, int columns, int rows, double[] values) {

  /** Checks that counts fit. */
  public ClassGrid {
    if (toGround.length != 6 || values.length != Math.multiplyExact(columns, rows)) {
      throw new IllegalArgumentException(
          values.length + " values for " + columns + " x " + rows + " cells");
    }
  }

  /** Ground X of a raster position. */
  public double x(double column, double row) {
    return toGround[0] + toGround[1] * column + toGround[2] * row;
  }

  /** Ground Y of a raster position. */
  public double y(double column, double row) {
    return toGround[3] + toGround[4] * column + toGround[5] * row;
  }
}
