package plyscape.simulate;

import plyscape.fault.JobFault;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.text.Template;

/**
 * Depth of the surface below the top face at the cell centres of a frame over the whole panel, mm,
 * positive down, row by row from the south; 0 is uncut. Floats hold depths of 16 mm to 0.000001.
 * The array is shared, not copied.
 */
public record HeightField(CellFrame frame, float[] depth) {

  /**
   * What a whole comparison holds a cell, at most: depth, target, verdict, reach, area, distance.
   */
  private static final int BYTES_A_CELL = 12;

  /**
   * An uncut panel with cells no larger than asked for, evenly dividing each side.
   *
   * @throws JobFault if that many cells don't fit into memory
   */
  public static HeightField uncut(Box panel, double cellMm) {
    double cells = panel.width() / cellMm * (panel.height() / cellMm);
    if (cells > Integer.MAX_VALUE / 2.0
        || cells * BYTES_A_CELL > Runtime.getRuntime().maxMemory()) {
      throw new JobFault(
          Template.fill(
              "a simulation of %s x %s mm at cells of %s mm needs %s MiB, more than there is",
              Math.round(panel.width()),
              Math.round(panel.height()),
              cellMm,
              Math.round(cells * BYTES_A_CELL / (1 << 20))),
          "choose larger cells, or give Java more memory with -Xmx");
    }
    int columns = (int) Math.max(1, Math.ceil(panel.width() / cellMm - 1e-9));
    int rows = (int) Math.max(1, Math.ceil(panel.height() / cellMm - 1e-9));
    CellFrame frame =
        new CellFrame(
            panel.minX(),
            panel.minY(),
            panel.width() / columns,
            panel.height() / rows,
            columns,
            rows);
    return new HeightField(frame, new float[frame.size()]);
  }

  /** The same cells with depths of their own. */
  HeightField with(float[] other) {
    return new HeightField(frame, other);
  }

  /** Depth of a cell. */
  public double at(int column, int row) {
    return depth[row * frame.columns() + column];
  }

  /** Area of a cell, mm2. */
  public double cellAreaMm2() {
    return frame.cellX() * frame.cellY();
  }
}
