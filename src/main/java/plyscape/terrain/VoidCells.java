package plyscape.terrain;

import plyscape.grid.Box;
import plyscape.grid.CellFrame;

/**
 * Ground of the carved area that had no value. Immutable; the array isn't to be changed.
 *
 * @param count cells without a value, as the file has them
 * @param share of the carved area, 0 to 1; ground beyond the raster counts too
 * @param deep whether some of it is more than {@value #NEAR} cells from ground that has a value
 * @param frame cells of the mask, panel mm
 * @param mask which cells are void, row by row from the south; null when none is
 */
public record VoidCells(int count, double share, boolean deep, CellFrame frame, boolean[] mask) {

  /** As far as a value carries: the interpolation between neighbours, and one cell more. */
  static final int NEAR = 2;

  /** A smaller share than this doesn't make a landscape, if no gap is deep. */
  private static final double SMALL_SHARE = 0.02;

  /** No voids at all. */
  public static final VoidCells NONE = new VoidCells(0, 0, false, null, null);

  /** Checks that the mask fits its frame. */
  public VoidCells {
    if ((mask == null) != (frame == null) || mask != null && mask.length != frame.size()) {
      throw new IllegalArgumentException("a mask that doesn't fit its frame");
    }
  }

  /**
   * The voids among cells.
   *
   * @param count as the file has them
   * @param carved box of the carved area, panel mm
   */
  static VoidCells of(int count, CellFrame frame, boolean[] mask, Box carved) {
    int all = 0;
    int without = 0;
    for (int i = 0; i < mask.length; i++) {
      if (inside(frame, i, carved)) {
        all++;
        without += mask[i] ? 1 : 0;
      }
    }
    if (without == 0) {
      return NONE;
    }
    return new VoidCells(count, without / (double) all, anyDeep(frame, mask, carved), frame, mask);
  }

  private static boolean inside(CellFrame frame, int i, Box carved) {
    return carved.contains(frame.centreX(i % frame.columns()), frame.centreY(i / frame.columns()));
  }

  private static boolean anyDeep(CellFrame frame, boolean[] mask, Box carved) {
    boolean[] left = mask;
    for (int step = 0; step < NEAR; step++) {
      left = eroded(left, frame.columns(), frame.rows());
    }
    for (int i = 0; i < left.length; i++) {
      if (left[i] && inside(frame, i, carved)) {
        return true;
      }
    }
    return false;
  }

  /** Without the cells that have a neighbour, of eight, with a value. */
  private static boolean[] eroded(boolean[] mask, int columns, int rows) {
    boolean[] out = new boolean[mask.length];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        boolean all = mask[row * columns + column];
        for (int r = Math.max(0, row - 1); all && r <= Math.min(rows - 1, row + 1); r++) {
          for (int c = Math.max(0, column - 1);
              all && c <= Math.min(columns - 1, column + 1);
              c++) {
            all = mask[r * columns + c];
          }
        }
        out[row * columns + column] = all;
      }
    }
    return out;
  }

  /**
   * Whether it is little enough, and near enough to known ground, to be filled without a warning.
   */
  public boolean small() {
    return share <= SMALL_SHARE && !deep;
  }

  /** Whether a place on the panel, mm, lies in a void cell. */
  public boolean at(double x, double y) {
    if (mask == null) {
      return false;
    }
    int column = (int) Math.floor((x - frame.minX()) / frame.cellX());
    int row = (int) Math.floor((y - frame.minY()) / frame.cellY());
    return column >= 0
        && row >= 0
        && column < frame.columns()
        && row < frame.rows()
        && mask[row * frame.columns() + column];
  }

  /**
   * Those of some cells only.
   *
   * @param inside which cells, in the mask's order
   * @param carved box of the carved area, panel mm
   */
  public VoidCells within(boolean[] inside, Box carved) {
    if (mask == null) {
      return this;
    }
    boolean[] both = mask.clone();
    int left = 0;
    for (int i = 0; i < both.length; i++) {
      both[i] &= inside[i];
      left += both[i] && inside(frame, i, carved) ? 1 : 0;
    }
    return of(Math.min(count, left), frame, both, carved);
  }

  /** The same on a panel that begins elsewhere. */
  VoidCells moved(double byX, double byY) {
    return mask == null
        ? this
        : new VoidCells(
            count,
            share,
            deep,
            new CellFrame(
                frame.minX() + byX,
                frame.minY() + byY,
                frame.cellX(),
                frame.cellY(),
                frame.columns(),
                frame.rows()),
            mask);
  }
}
