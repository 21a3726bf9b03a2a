package plyscape.terrain;

import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;

/**
 * The terrain over the carved area, after reprojection, crop, void filling and smoothing.
 * Immutable.
 *
 * @param file name as given
 * @param crs CRS name or code for people, "" when the raster has none
 * @param frame how the ground lies on the panel; {@code frame.panel()} is the carved area
 * @param elevationM elevations in metres at cell centres, the grid's frame in panel mm; covers the
 *     carved area and may stick out of it (a crop isn't snapped to cells). No NaN.
 * @param zminM least elevation of cells whose centres lie in the crop and weren't void
 * @param zmaxM greatest of the same
 * @param cellM ground size of a cell in X, metres
 * @param voidsFilled cells that had no value and were filled
 */
public record Terrain(
    String file,
    String crs,
    GroundFrame frame,
    Grid elevationM,
    double zminM,
    double zmaxM,
    double cellM,
    int voidsFilled) {

  /**
   * A part of it on a panel of its own; elevations, their range and what was filled stay the
   * whole's.
   *
   * @param part of the carved area, mm
   * @param own where that part lies on its own panel, mm; of the same size
   */
  public Terrain part(Box part, Box own) {
    CellFrame cells = elevationM.frame();
    CellFrame moved =
        new CellFrame(
            cells.minX() + own.minX() - part.minX(),
            cells.minY() + own.minY() - part.minY(),
            cells.cellX(),
            cells.cellY(),
            cells.columns(),
            cells.rows());
    Grid grid = new Grid(moved, elevationM.values());
    return new Terrain(file, crs, frame.part(part, own), grid, zminM, zmaxM, cellM, voidsFilled);
  }
}
