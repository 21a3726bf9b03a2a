package plyscape.terrain.raster;

import java.io.IOException;
import plyscape.terrain.crs.GroundCrs;

/**
 * One elevation raster, open for reading. Each file format has one implementation; what they share
 * is tested by one base. Void cells are NaN, whatever the file uses for them.
 */
public interface Raster extends AutoCloseable {

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

  /**
   * Whether the file (or one beside it) says where its cells lie; else they are squares of 1 from
   * 0, 0.
   */
  default boolean placed() {
    return true;
  }

  /** Whether its cells were made from points, so that their size was ours to choose. */
  default boolean ofPoints() {
    return false;
  }

  /** Rows of a tile or strip: reading whole ones, counted from row 0, decodes nothing twice. */
  default int rowsAtOnce() {
    return 64;
  }

  /** Lets go of the file. */
  @Override
  void close() throws IOException;
}
