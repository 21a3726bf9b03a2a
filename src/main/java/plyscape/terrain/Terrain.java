package plyscape.terrain;

import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;

/**
 * The terrain over the carved area, after reprojection, crop, void filling and smoothing.
 * Immutable.
 *
 * @param source the raster that it comes from
 * @param frame how the ground lies on the panel; {@code frame.panel()} is the carved area
 * @param elevationM elevations in metres at cell centres, the grid's frame in panel mm; covers the
 *     carved area and may stick out of it (a crop isn't snapped to cells). No NaN.
 * @param rangeM least and greatest elevation of cells whose centres lie in the crop and weren't
 *     void
 * @param voids ground that had no value and was filled
 * @param counted cells that count for the range and for bands by cells, in the grid's order; null
 *     for all in the carved area
 */
public record Terrain(
    RasterSource source,
    GroundFrame frame,
    Grid elevationM,
    Range rangeM,
    VoidCells voids,
    boolean[] counted) {

  /** Two elevations, metres, the lower first. */
  public record Range(double leastM, double greatestM) {

    /** Checks the order. */
    public Range {
      if (!(leastM <= greatestM)) {
        throw new IllegalArgumentException(leastM + " above " + greatestM);
      }
    }
  }

  /** Name of the raster as given. */
  public String file() {
    return source.file();
  }

  /** CRS name or code for people, "" when the raster has none. */
  public String crs() {
    return source.crs();
  }

  /** Ground size of a cell in X, metres. */
  public double cellM() {
    return source.cellM();
  }

  /** Least elevation, metres. */
  public double zminM() {
    return rangeM.leastM();
  }

  /** Greatest elevation, metres. */
  public double zmaxM() {
    return rangeM.greatestM();
  }

  /** Cells that had no value. */
  public int voidsFilled() {
    return voids.count();
  }

  /**
   * The same with the range of some of its cells only: those whose centres lie in the carved area
   * and that count. Filled cells count too, as they lie between their neighbours. Without any such
   * cell the whole's range stays.
   *
   * @param counts in the grid's order
   */
  public Terrain within(boolean[] counts) {
    CellFrame cells = elevationM.frame();
    double min = Double.POSITIVE_INFINITY;
    double max = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < counts.length; i++) {
      int column = i % cells.columns();
      int row = i / cells.columns();
      if (counts[i] && frame.panel().contains(cells.centreX(column), cells.centreY(row))) {
        min = Math.min(min, elevationM.at(column, row));
        max = Math.max(max, elevationM.at(column, row));
      }
    }
    return min > max
        ? this
        : new Terrain(source, frame, elevationM, new Range(min, max), voids, counts.clone());
  }

  /** The same with other voids. */
  public Terrain with(VoidCells others) {
    return new Terrain(source, frame, elevationM, rangeM, others, counted);
  }

  /** The same with other elevations of the same cells. */
  public Terrain with(Grid elevations) {
    return new Terrain(source, frame, elevations, rangeM, voids, counted);
  }

  /** Whether a cell counts for the range and for bands by cells. */
  public boolean counts(int column, int row) {
    return counted == null || counted[row * elevationM.frame().columns() + column];
  }

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
    VoidCells there = voids.moved(own.minX() - part.minX(), own.minY() - part.minY());
    return new Terrain(source, frame.part(part, own), grid, rangeM, there, counted);
  }
}
