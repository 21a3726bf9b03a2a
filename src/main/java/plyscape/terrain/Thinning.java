package plyscape.terrain;

import plyscape.grid.CellFrame;
import plyscape.grid.Grid;

/**
 * Thins out a grid whose cells are far finer than the smallest cutter can show: blocks of cells
 * become their mean. Blocks are as large as fits into the finest cell that is of use (a third of
 * the cutter), so they are never coarser than that, and at least half as large.
 */
final class Thinning {

  /** Cells across the smallest cutter that are of use. */
  static final double CELLS_PER_TOOL = 3;

  private Thinning() {}

  /** How many cells each way become one; 1 for as it is. */
  static int factor(double cellMm, double finestMm) {
    return (int) Math.max(1, Math.floor(finestMm / cellMm + 1e-9));
  }

  /** The grid, thinned where that's due; the frame grows to whole blocks in the north and east. */
  static Grid thin(Grid grid, double finestMm) {
    CellFrame f = grid.frame();
    int across = factor(f.cellX(), finestMm);
    int along = factor(f.cellY(), finestMm);
    if (across == 1 && along == 1) {
      return grid;
    }
    int columns = (f.columns() + across - 1) / across;
    int rows = (f.rows() + along - 1) / along;
    double[] means = new double[columns * rows];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        means[row * columns + column] = mean(grid, column * across, row * along, across, along);
      }
    }
    return new Grid(
        new CellFrame(f.minX(), f.minY(), f.cellX() * across, f.cellY() * along, columns, rows),
        means);
  }

  /**
   * Mean of a block; beyond the edge the edge's cells are held, so that the mean belongs to the
   * block's middle.
   */
  private static double mean(Grid grid, int column, int row, int across, int along) {
    int lastColumn = grid.frame().columns() - 1;
    int lastRow = grid.frame().rows() - 1;
    double sum = 0;
    for (int r = row; r < row + along; r++) {
      for (int c = column; c < column + across; c++) {
        sum += grid.at(Math.min(c, lastColumn), Math.min(r, lastRow));
      }
    }
    return sum / (across * along);
  }
}
