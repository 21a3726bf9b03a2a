package plyscape.terrain;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import plyscape.fault.Place;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Turn;
import plyscape.terrain.crs.GroundCrs;

/** A raster seen on a metric ground plane: axis-parallel cells, row 0 the southernmost. */
interface GroundRaster {

  /** All its cells on the ground, in units of {@link #crs()}. */
  CellFrame frame();

  /** The ground that it covers: within {@link #frame()}, whose outermost cells may stick out. */
  default Box extent() {
    return frame().box();
  }

  /** The ground CRS: projected, or none. */
  GroundCrs crs();

  /**
   * The same ground turned: resampled from the raster itself onto cells along the turned axes.
   *
   * @param place blamed when it can't be mapped
   */
  GroundRaster turned(Turn turn, Place place);

  /** Whether a place of this plane lies on the raster. */
  boolean covers(double x, double y);

  /**
   * Reads a window that lies within the frame.
   *
   * @return values row by row from the south; NaN where there is none
   * @throws IOException when the file can't be read
   */
  double[] read(Window window) throws IOException;

  /**
   * How many cells of the file itself, by their centres, have no value within a box of the ground;
   * empty when they are the cells of this.
   */
  default OptionalInt voidsOfFile(Box ground) throws IOException {
    return OptionalInt.empty();
  }

  /**
   * The window in parts of whole rows, from the south, that are cheap to read one after the other.
   */
  List<Window> strips(Window window);

  /** Parts of a number of rows each. */
  static List<Window> evenStrips(Window w, int rowsEach) {
    List<Window> out = new ArrayList<>();
    for (int row = 0; row < w.rows(); row += rowsEach) {
      out.add(
          new Window(w.column(), w.row() + row, w.columns(), Math.min(rowsEach, w.rows() - row)));
    }
    return out;
  }

  /**
   * A block of cells, counted from the south-west.
   *
   * @param column first column
   * @param row first row
   */
  record Window(int column, int row, int columns, int rows) {

    /** Checks counts. */
    public Window {
      if (column < 0 || row < 0 || columns < 1 || rows < 1) {
        throw new IllegalArgumentException(
            "bad window " + column + " " + row + " " + columns + " " + rows);
      }
    }

    /** Cells in all. */
    long cells() {
      return (long) columns * rows;
    }
  }
}
