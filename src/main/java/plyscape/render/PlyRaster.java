package plyscape.render;

import plyscape.grid.Box;
import plyscape.region.Tiling;

/**
 * Which ply shows at the centre of each cell of a picture of the whole panel, row by row from the
 * top (north). Ply 0 is the border outside the carved area. Even-odd rule on the exposed polygons;
 * exact at cell centres.
 *
 * @param cellMm side of a cell
 * @param plies ply numbers
 */
record PlyRaster(int columns, int rows, double cellMm, short[] plies) {

  /**
   * Rasters a tiling on a panel of the given size; cells are square, the last row and column may
   * stick out.
   */
  static PlyRaster of(Tiling tiling, double widthMm, double heightMm, double cellMm) {
    return of(tiling, new Box(0, 0, widthMm, heightMm), cellMm);
  }

  /** The same of a part of the panel: the first cell stands in its north-west corner. */
  static PlyRaster of(Tiling tiling, Box part, double cellMm) {
    int columns = (int) Math.ceil(part.width() / cellMm - 1e-9);
    int rows = (int) Math.ceil(part.height() / cellMm - 1e-9);
    short[] plies = new short[Math.multiplyExact(columns, rows)];
    PictureCells cells = new PictureCells(columns, rows, cellMm, part.minX(), part.maxY());
    tiling.exposed().forEach((ply, area) -> cells.fill(area, ply.shortValue(), plies));
    return new PlyRaster(columns, rows, cellMm, plies);
  }
}
