package plyscape.terrain.raster;

/**
 * Maps raster positions to ground: {@code x = x0 + xCol*col + xRow*row}, {@code y = y0 + yCol*col +
 * yRow*row}. Raster position (0, 0) is the outer corner of the file's first cell, (0.5, 0.5) its
 * centre. Immutable.
 */
public record Affine(double x0, double xCol, double xRow, double y0, double yCol, double yRow) {

  /** Checks that it can be inverted and is finite. */
  public Affine {
    double det = xCol * yRow - xRow * yCol;
    if (!Double.isFinite(x0 + y0 + det) || det == 0) {
      throw new IllegalArgumentException("cells without extent");
    }
  }

  /** North up: the outer corner of the first cell is the north-west corner. */
  public static Affine northUp(double westX, double northY, double cellX, double cellY) {
    return new Affine(westX, cellX, 0, northY, 0, -cellY);
  }

  /** Ground X of a raster position. */
  public double x(double col, double row) {
    return x0 + xCol * col + xRow * row;
  }

  /** Ground Y of a raster position. */
  public double y(double col, double row) {
    return y0 + yCol * col + yRow * row;
  }

  /** Whether rows and columns run along the axes (either way round). */
  public boolean axisParallel() {
    double scale = Math.abs(xCol) + Math.abs(yRow);
    return Math.abs(xRow) + Math.abs(yCol) <= 1e-9 * scale;
  }

  /**
   * The same with the raster origin moved by a part of a cell, so that (col, row) maps to what
   * (col+dc, row+dr) did.
   */
  public Affine shifted(double dc, double dr) {
    return new Affine(x(dc, dr), xCol, xRow, y(dc, dr), yCol, yRow);
  }

  /** Ground to raster. */
  public Affine inverse() {
    double det = xCol * yRow - xRow * yCol;
    double a = yRow / det;
    double b = -xRow / det;
    double c = -yCol / det;
    double d = xCol / det;
    return new Affine(-a * x0 - b * y0, a, b, -c * x0 - d * y0, c, d);
  }
}
