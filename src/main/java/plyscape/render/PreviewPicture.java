package plyscape.render;

import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/**
 * The top view of the finished panel in ply colours, with light and shadow from the steps, a
 * legend, a scale bar and an arrow to north. A picture of what the plan says, not of the toolpaths.
 */
public final class PreviewPicture {

  private static final int LONGEST_PX = 1000;
  private static final int MARGIN = 36;
  private static final int FOOT = 56;

  /** Cells a pixel in each direction; averaged, they make smooth edges. */
  private static final int FINER = 2;

  /** Side of the block in the corner. */
  private static final double DETAIL_MM = 70;

  private PreviewPicture() {}

  /** A PNG file. */
  public static byte[] png(Landscape plan) {
    return png(plan, (top, pxPerMm) -> {});
  }

  /** Draws more on the top view: pixels of the panel's edges are those of the canvas. */
  interface Overlay {
    void draw(Canvas top, double pxPerMm);
  }

  /** A PNG file with more drawn on the panel. */
  static byte[] png(Landscape plan, Overlay overlay) {
    Job.PanelSpec panel = plan.job().panel();
    double pxPerMm = LONGEST_PX / longestMm(plan);
    Canvas top = topView(plan, pxPerMm, FINER);
    TopContours.draw(top, plan, pxPerMm);
    overlay.draw(top, pxPerMm);
    int height = Math.max(top.height() + FOOT, PlyLegend.height(plan)) + 2 * MARGIN;
    Canvas canvas = new Canvas(top.width() + PlyLegend.WIDTH + 3 * MARGIN, height, Colours.PAPER);
    canvas.paste(top, MARGIN, MARGIN);
    canvas.frame(
        MARGIN - 1,
        MARGIN - 1,
        top.width() + 2,
        top.height() + 2,
        Colours.mix(Colours.INK, Colours.PAPER, 0.3));
    PlyLegend.draw(canvas, top.width() + 2 * MARGIN, MARGIN, plan);
    drawBlock(canvas, top.width() + 2 * MARGIN, MARGIN + PlyLegend.height(plan), plan);
    int foot = MARGIN + top.height() + 22;
    ScaleBar.draw(
        canvas, MARGIN, foot, pxPerMm, panel.widthMm(), plan.terrain().frame().metresPerMm());
    canvas.text(MARGIN, canvas.height() - 10, 10, Colours.FAINT, TopContours.words(plan));
    drawNorth(canvas, MARGIN + top.width() - 34, foot + 6, plan.terrain().frame().turn().degrees());
    return Png.write(canvas, (int) Math.round(pxPerMm * 1000));
  }

  /**
   * A PNG file of the panel alone, edge to edge, one pixel a cell of {@link CellMap#of} with as
   * many cells.
   */
  public static byte[] panelPng(Landscape plan, int longestPx) {
    return Png.write(topView(plan, longestPx / longestMm(plan), 1), 0);
  }

  private static Canvas topView(Landscape plan, double pxPerMm, int finer) {
    Job.PanelSpec panel = plan.job().panel();
    Canvas top =
        TopView.draw(
            plan,
            PlyRaster.of(plan.tiling(), panel.widthMm(), panel.heightMm(), 1 / (finer * pxPerMm)),
            finer);
    VoidHatch.draw(top, plan, pxPerMm);
    return top;
  }

  private static double longestMm(Landscape plan) {
    return Math.max(plan.job().panel().widthMm(), plan.job().panel().heightMm());
  }

  /** Below the legend, where there is room: a block of the panel whose walls show their plies. */
  private static void drawBlock(Canvas canvas, int x, int y, Landscape plan) {
    Box block = BlockPicture.liveliest(plan, DETAIL_MM);
    Canvas view = new BlockView(plan, block, BlockPicture.STRETCH).draw(PlyLegend.WIDTH);
    int room = canvas.height() - MARGIN - y;
    if (view.height() + 36 <= room) {
      int top = canvas.height() - MARGIN - view.height();
      canvas.text(
          x,
          top - 14,
          10,
          Colours.FAINT,
          "A piece of it from the south-west, heights x "
              + Numbers.trimmed(BlockPicture.STRETCH, 1));
      canvas.paste(view, x, top);
    }
  }

  /**
   * An arrow about a pixel.
   *
   * @param turnDegrees direction of north, counter-clockwise from up
   */
  private static void drawNorth(Canvas canvas, int x, int y, double turnDegrees) {
    double cos = Math.cos(Math.toRadians(turnDegrees));
    double sin = Math.sin(Math.toRadians(turnDegrees));
    double[][] strokes = {{0, -12, 0, 11}, {0, 11, -5, 3}, {0, 11, 5, 3}};
    for (double[] s : strokes) {
      canvas.line(
          x + s[0] * cos - s[1] * sin,
          y - (s[0] * sin + s[1] * cos),
          x + s[2] * cos - s[3] * sin,
          y - (s[2] * sin + s[3] * cos),
          1.6,
          Colours.INK);
    }
    canvas.text(x + 12, y + 10, 12, Colours.INK, "N");
  }
}
