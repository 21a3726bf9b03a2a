package plyscape.terrain.raster;

import java.io.IOException;
import plyscape.terrain.crs.GroundCrs;

/**
 * One elevation raster, open for reading. Each file format has one implementation; what they share
 * is tested by one base. Void cells are NaN, whatever the file uses for them.
 */
public interface Raster extends AutoCloseable {

  /** What its file says of its cells. */
  RasterHead head();

  /** The file's name, for messages. */
  default String name() {
    return head().name();
  }

  /** Count of columns. */
  default int columns() {
    return head().columns();
  }

  /** Count of rows. */
  default int rows() {
    return head().rows();
  }

  /** Where the cells lie on the ground, in the CRS's units. */
  default Affine toGround() {
    return head().toGround();
  }

  /** The CRS. */
  default GroundCrs crs() {
    return head().crs();
  }

  /**
   * Reads a window that lies within the raster.
   *
   * @return values in the file's order, row by row; NaN where there is none
   * @throws IOException when the file can't be read
   */
  double[] read(int column, int row, int columns, int rows) throws IOException;

  /** Metres in one unit of what {@link #read} gives: 1 unless the file names a unit. */
  default double metresPerValue() {
    return 1;
  }

  /** Whether the file says what unit its elevations have. */
  default boolean unitStated() {
    return false;
  }

  /** A unit that the file names but which isn't known, so that metres are taken; "" for none. */
  default String unknownUnit() {
    return "";
  }

  /** Rows of a tile or strip: reading whole ones, counted from row 0, decodes nothing twice. */
  default int rowsAtOnce() {
    return 64;
  }

  /** Lets go of the file. */
  @Override
  void close() throws IOException;
}
