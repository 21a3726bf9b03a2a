package plyscape.terrain;

import plyscape.fault.JobFault;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.terrain.GroundRaster.Window;

/**
 * The cells of a window whose centres lie in the crop: what counts for the least and greatest
 * elevation.
 *
 * @param columns width of the window that holds them, for indices
 * @param firstColumn first such column of the window
 * @param lastColumn last one
 * @param firstRow first such row of the window
 * @param lastRow last one
 */
record CropWindow(int columns, int firstColumn, int lastColumn, int firstRow, int lastRow) {

  /** A crop edge on a cell's centre counts as in it, whatever the last bits of the sum are. */
  private static final double SLACK = 1e-9;

  /**
   * All cells that bilinear values within the crop need: one ring more than those whose centres lie
   * in it.
   */
  static Window around(Box crop, CellFrame cells) {
    int c0 = hold(Math.floor(column(crop.minX(), cells)), cells.columns());
    int c1 = hold(Math.ceil(column(crop.maxX(), cells)), cells.columns());
    int r0 = hold(Math.floor(row(crop.minY(), cells)), cells.rows());
    int r1 = hold(Math.ceil(row(crop.maxY(), cells)), cells.rows());
    return new Window(c0, r0, c1 - c0 + 1, r1 - r0 + 1);
  }

  /**
   * The window with a ring of whole blocks around it, as far as there are cells; it begins on a
   * block of the frame.
   */
  static Window inBlocks(Window w, CellFrame cells, int across, int along) {
    int c0 = Math.max(0, w.column() / across - 1) * across;
    int r0 = Math.max(0, w.row() / along - 1) * along;
    int c1 = Math.min(cells.columns(), ((w.column() + w.columns() - 1) / across + 2) * across);
    int r1 = Math.min(cells.rows(), ((w.row() + w.rows() - 1) / along + 2) * along);
    return new Window(c0, r0, c1 - c0, r1 - r0);
  }

  /** The cells of the window whose centres lie in the crop; none is a fault. */
  static CropWindow centresIn(Box crop, CellFrame cells, Window window) {
    int c0 = hold(Math.ceil(column(crop.minX(), cells) - SLACK), cells.columns()) - window.column();
    int c1 =
        hold(Math.floor(column(crop.maxX(), cells) + SLACK), cells.columns()) - window.column();
    int r0 = hold(Math.ceil(row(crop.minY(), cells) - SLACK), cells.rows()) - window.row();
    int r1 = hold(Math.floor(row(crop.maxY(), cells) + SLACK), cells.rows()) - window.row();
    if (c1 < c0 || r1 < r0) {
      throw new JobFault(
          "the crop is smaller than a cell of the terrain ("
              + (float) cells.cellX()
              + " x "
              + (float) cells.cellY()
              + ")",
          "take a larger crop or a finer raster");
    }
    return new CropWindow(window.columns(), c0, c1, r0, r1);
  }

  /** The blocks that hold the counted cells. */
  CropWindow inBlocks(int across, int along) {
    return new CropWindow(
        (columns + across - 1) / across,
        firstColumn / across,
        lastColumn / across,
        firstRow / along,
        lastRow / along);
  }

  /**
   * What the counted cells of some rows hold.
   *
   * @param values rows of the window, NaN for void
   * @param fromRow which row of the window the first of them is
   */
  Range range(double[] values, int fromRow, int rows) {
    double min = Double.POSITIVE_INFINITY;
    double max = Double.NEGATIVE_INFINITY;
    int valid = 0;
    int voids = 0;
    for (int row = Math.max(firstRow, fromRow);
        row <= Math.min(lastRow, fromRow + rows - 1);
        row++) {
      int start = (row - fromRow) * columns;
      for (int i = start + firstColumn; i <= start + lastColumn; i++) {
        double value = values[i];
        // NaN is none of these.
        min = value < min ? value : min;
        max = value > max ? value : max;
        voids += Double.isNaN(value) ? 1 : 0;
      }
      valid += lastColumn - firstColumn + 1;
    }
    return new Range(min, max, valid - voids, voids);
  }

  /** The same over a whole window whose voids have been filled. */
  Range range(double[] values, boolean[] isVoid) {
    double min = Double.POSITIVE_INFINITY;
    double max = Double.NEGATIVE_INFINITY;
    int valid = 0;
    int voids = 0;
    for (int row = firstRow; row <= lastRow; row++) {
      for (int i = row * columns + firstColumn; i <= row * columns + lastColumn; i++) {
        if (isVoid[i]) {
          voids++;
        } else {
          valid++;
          min = Math.min(min, values[i]);
          max = Math.max(max, values[i]);
        }
      }
    }
    return new Range(min, max, valid, voids);
  }

  /**
   * Values over ground that wasn't void.
   *
   * @param min least
   * @param max greatest
   * @param valid cells with a value of their own
   * @param voids cells without
   */
  record Range(double min, double max, int valid, int voids) {

    /** Of no cells. */
    static final Range NONE = new Range(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, 0);

    /** Of both. */
    Range and(Range other) {
      return new Range(
          Math.min(min, other.min),
          Math.max(max, other.max),
          valid + other.valid,
          voids + other.voids);
    }
  }

  private static double column(double x, CellFrame cells) {
    return (x - cells.minX()) / cells.cellX() - 0.5;
  }

  private static double row(double y, CellFrame cells) {
    return (y - cells.minY()) / cells.cellY() - 0.5;
  }

  private static int hold(double index, int count) {
    return (int) Math.min(Math.max(index, 0), count - 1);
  }
}
