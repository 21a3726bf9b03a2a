package plyscape.terrain;

import java.io.IOException;

/**
 * One elevation raster, open for reading. Each file format has one implementation; what they share is tested by one
 * base. Values are elevations in metres unless the file says otherwise; void cells are NaN, whatever the file uses.
 */
interface Raster extends AutoCloseable {

  /** The file's name, for messages. */
  String name();

  /** Count of columns. */
  int columns();

  /** Count of rows. */
  int rows();

  /** Where the cells lie on the ground, in the CRS's units. */
  Affine toGround();

  /** The CRS. */
  GroundCrs crs();

  /**
   * Reads a window that lies within the raster.
   *
   * @return values in the file's order, row by row; NaN where there is none
   * @throws IOException when the file can't be read
   */
  double[] read(int column, int row, int columns, int rows) throws IOException;

  /** Cells of a window, chosen so that reading it at once is cheap: the height of a tile or strip, at least 1. */
  default int rowsAtOnce() {
    return 64;
  }

  /** Lets go of the file. */
  @Override
  void close() throws IOException;
}
