package plyscape.simulate;

import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;

/**
 * Depth of the surface below the top face at the cell centres of a frame over the whole panel, mm, positive down, row by row
 * from the south; 0 is uncut. Floats hold depths of 16 mm to 0.000001. The array is shared, not copied.
 */
public record HeightField(CellFrame frame, float[] depth) {

  /** An uncut panel with cells no larger than asked for, evenly dividing each side. */
  public static HeightField uncut(Box panel, double cellMm) {
    int columns = (int) Math.max(1, Math.ceil(panel.width() / cellMm - 1e-9));
    int rows = (int) Math.max(1, Math.ceil(panel.height() / cellMm - 1e-9));
    CellFrame frame =
        new CellFrame(panel.minX(), panel.minY(), panel.width() / columns, panel.height() / rows, columns, rows);
    return new HeightField(frame, new float[frame.size()]);
  }

  /** Depth of a cell. */
  public double at(int column, int row) {
    return depth[row * frame.columns() + column];
  }

  /** Area of a cell, mm2. */
  public double cellAreaMm2() {
    return frame.cellX() * frame.cellY();
  }

  /** The same as a grid of doubles, for drawing; twice the memory. */
  public Grid grid() {
    double[] values = new double[depth.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = depth[i];
    }
    return new Grid(frame, values);
  }
}
