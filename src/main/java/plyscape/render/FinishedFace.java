package plyscape.render;

import plyscape.grid.CellFrame;
import plyscape.layup.FaceWindow;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/** The surface after cutting and sanding, mm below the panel's first top face, positive down. */
final class FinishedFace {

  private FinishedFace() {}

  /**
   * Where a ply shows: its target depth and what the sanding takes. Ply 0, the border, is left
   * uncut like an uncut top ply.
   */
  static double depthMm(Landscape plan, int plyNumber) {
    double sanding = plan.job().allowance().sandingMm();
    return plyNumber == 0 ? sanding : depth(plan, plyNumber).targetMm() + sanding;
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

  /** Such as {@code cut 1.290} or {@code cut 0.947 to 1.626}, or {@code left uncut}. */
  static String cutText(Landscape plan, int plyNumber) {
    FaceWindow cut = plan.cutMm(plyNumber);
    if (cut.lowerMm() <= 0) {
      return "left uncut";
    }
    String text = "cut " + Numbers.fixed(cut.upperMm(), 3);
    return cut.open() ? text + " to " + Numbers.fixed(cut.lowerMm(), 3) : text;
  }

  /** The depths of a ply by its number. */
  static PlyDepth depth(Landscape plan, int plyNumber) {
    return plan.depths().of(plyNumber);
  }
}
