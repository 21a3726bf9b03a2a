package plyscape.render;

import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.plan.Plan;

/**
 * The top view of the finished panel in ply colours, with light and shadow from the steps, a legend, a scale bar and an arrow to
 * north. A picture of what the plan says, not of the toolpaths.
 */
public final class PreviewPicture {

  private static final int LONGEST_PX = 1200;
  private static final int MARGIN = 36;
  private static final int FOOT = 56;
  /** Cells a pixel in each direction; averaged, they make smooth edges. */
  private static final int FINER = 2;

  private PreviewPicture() {}

  /** A PNG file. */
  public static byte[] png(Plan plan) {
    Job.PanelSpec panel = plan.job().panel();
    double pxPerMm = LONGEST_PX / Math.max(panel.widthMm(), panel.heightMm());
    Canvas top = topView(plan, pxPerMm);
    int height = Math.max(top.height() + FOOT, PlyLegend.height(plan)) + 2 * MARGIN;
    Canvas canvas = new Canvas(top.width() + PlyLegend.WIDTH + 3 * MARGIN, height, Colours.PAPER);
    for (int y = 0; y < top.height(); y++) {
      System.arraycopy(
          top.pixels(), y * top.width(), canvas.pixels(), (MARGIN + y) * canvas.width() + MARGIN, top.width());
    }
    canvas.frame(MARGIN - 1, MARGIN - 1, top.width() + 2, top.height() + 2, Colours.mix(Colours.INK, Colours.PAPER, 0.3));
    PlyLegend.draw(canvas, top.width() + 2 * MARGIN, MARGIN, plan);
    int foot = MARGIN + top.height() + 22;
    ScaleBar.draw(canvas, MARGIN, foot, pxPerMm, panel.widthMm(), plan.terrain().frame().metresPerMm());
    drawNorth(canvas, MARGIN + top.width() - 34, foot - 8);
    return Png.write(canvas, (int) Math.round(pxPerMm * 1000));
  }

  /** A PNG file of the panel alone, edge to edge, so many pixels on its longer side. */
  public static byte[] panelPng(Plan plan, int longestPx) {
    Job.PanelSpec panel = plan.job().panel();
    return Png.write(topView(plan, longestPx / Math.max(panel.widthMm(), panel.heightMm())), 0);
  }

  /** Only the panel, without legend; its size is the panel's times the scale, rounded up. */
  static Canvas topView(Plan plan, double pxPerMm) {
    Job.PanelSpec panel = plan.job().panel();
    PlyRaster raster = PlyRaster.of(plan.tiling(), panel.widthMm(), panel.heightMm(), 1 / (FINER * pxPerMm));
    double[] depths = new double[plan.depths().size() + 1];
    int[] colours = new int[depths.length];
    colours[0] = plan.depths().get(0).ply().rgb();
    depths[0] = FinishedFace.depthMm(plan, 0);
    for (PlyDepth depth : plan.depths()) {
      depths[depth.ply().number()] = FinishedFace.depthMm(plan, depth.ply().number());
      colours[depth.ply().number()] = depth.ply().rgb();
    }
    float[] light = Relief.light(raster, depths);
    Canvas canvas = new Canvas(raster.columns() / FINER, raster.rows() / FINER, Colours.PAPER);
    for (int y = 0; y < canvas.height(); y++) {
      for (int x = 0; x < canvas.width(); x++) {
        int red = 0;
        int green = 0;
        int blue = 0;
        for (int k = 0; k < FINER * FINER; k++) {
          int i = (y * FINER + k / FINER) * raster.columns() + x * FINER + k % FINER;
          int lit = Colours.light(colours[raster.plies()[i]], light[i]);
          red += lit >> 16 & 255;
          green += lit >> 8 & 255;
          blue += lit & 255;
        }
        int n = FINER * FINER;
        canvas.set(x, y, (red + n / 2) / n << 16 | (green + n / 2) / n << 8 | (blue + n / 2) / n);
      }
    }
    return canvas;
  }

  private static void drawNorth(Canvas canvas, int x, int y) {
    canvas.line(x, y + 26, x, y + 3, 1.6, Colours.INK);
    canvas.line(x, y + 3, x - 5, y + 11, 1.6, Colours.INK);
    canvas.line(x, y + 3, x + 5, y + 11, 1.6, Colours.INK);
    canvas.text(x + 12, y + 24, 12, Colours.INK, "N");
  }
}
