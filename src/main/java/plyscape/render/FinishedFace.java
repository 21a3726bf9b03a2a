package plyscape.render;

import plyscape.grid.CellFrame;
import plyscape.plan.Landscape;

/** The surface after cutting and sanding, mm below the panel's first top face, positive down. */
final class FinishedFace {

  private FinishedFace() {}

  /**
   * Where a ply shows: its target depth and what the sanding takes. Ply 0, the border, is left
   * uncut like an uncut top ply.
   */
  static double depthMm(Landscape plan, int plyNumber) {
    double sanding = plan.job().allowance().sandingMm();
    return plyNumber == 0 ? sanding : plan.depths().of(plyNumber).targetMm() + sanding;
  }

  /**
   * Heights of the cells of a raster whose north-west corner is given, mm, negative down; null when
   * every ply is one terrace.
   */
  static float[] heights(Landscape plan, PlyRaster raster, double westMm, double northMm) {
    if (plan.faces().isEmpty()) {
      return null;
    }
    int columns = raster.columns();
    int rows = raster.rows();
    double cell = raster.cellMm();
    double[] depths =
        plan.faces()
            .get()
            .depthsMm(new CellFrame(westMm, northMm - rows * cell, cell, cell, columns, rows));
    float[] heights = new float[depths.length];
    double sanding = plan.job().allowance().sandingMm();
    for (int i = 0; i < heights.length; i++) {
      double depth = depths[(rows - 1 - i / columns) * columns + i % columns];
      heights[i] =
          (float) -(Double.isNaN(depth) ? depthMm(plan, raster.plies()[i]) : depth + sanding);
    }
    return heights;
  }
}
