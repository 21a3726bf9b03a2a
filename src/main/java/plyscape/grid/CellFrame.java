package plyscape.grid;

/**
 * The frame of a regular cell grid: row 0 is the southernmost, column 0 the westernmost, values
 * stand at cell centres. Immutable.
 *
 * @param minX outer west edge of column 0
 * @param minY outer south edge of row 0
 * @param cellX cell width, positive
 * @param cellY cell height, positive
 * @param columns count, at least 1
 * @param rows count, at least 1
 */
public record CellFrame(
    double minX, double minY, double cellX, double cellY, int columns, int rows) {

  /** Checks sizes. */
  public CellFrame {
    if (!(cellX > 0) || !(cellY > 0) || columns < 1 || rows < 1) {
      throw new IllegalArgumentException(
          "bad cell frame " + cellX + " x " + cellY + ", " + columns + " x " + rows);
    }
  }

  /** X of the centre of a column. */
  public double centreX(int column) {
    return minX + (column + 0.5) * cellX;
  }

  /** Y of the centre of a row. */
  public double centreY(int row) {
    return minY + (row + 0.5) * cellY;
  }

  /** Outer edges. */
  public Box box() {
    return new Box(minX, minY, minX + columns * cellX, minY + rows * cellY);
  }

  /** Cells in all. */
  public int size() {
    return Math.multiplyExact(columns, rows);
  }
}
