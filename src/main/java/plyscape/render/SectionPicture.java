package plyscape.render;

import plyscape.grid.CellFrame;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.lettering.StrokeAlphabet;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/**
 * A cut through the finished panel from west to east, seen from the south: plies, glue lines, the
 * finished face. Heights are stretched by the factor written on it.
 */
public final class SectionPicture {

  private static final int WIDTH_PX = 1200;
  private static final int THICKNESS_PX = 330;
  private static final int MARGIN = 36;
  private static final int AXIS = 64;
  private static final int HEAD = 64;
  private static final int GLUE = 0x3a2f26;

  private SectionPicture() {}

  /** A PNG file of the section through the middle of the carved area. */
  public static byte[] png(Landscape plan) {
    return png(plan, (plan.tiling().carved().minY() + plan.tiling().carved().maxY()) / 2);
  }

  /** A PNG file of the section at a panel Y, mm. */
  public static byte[] png(Landscape plan, double yMm) {
    Job.PanelSpec panel = plan.job().panel();
    double across = WIDTH_PX / panel.widthMm();
    double down = THICKNESS_PX / plan.thicknessMm();
    int left = MARGIN + AXIS;
    int top = MARGIN + HEAD;
    int height = Math.max(top + THICKNESS_PX + 80, PlyLegend.height(plan) + 2 * MARGIN);
    Canvas canvas =
        new Canvas(left + WIDTH_PX + 2 * MARGIN + PlyLegend.WIDTH, height, Colours.PAPER);
    canvas.text(
        MARGIN,
        MARGIN + 14,
        15,
        Colours.INK,
        "Section at Y = " + Numbers.trimmed(yMm, 3) + " mm, west to east");
    canvas.text(
        MARGIN,
        MARGIN + 34,
        10,
        Colours.FAINT,
        "Heights x "
            + Numbers.fixed(down / across, 1)
            + ". Dark lines are glue; pale wood is cut or sanded away.");
    SectionLine line = SectionLine.of(plan.tiling(), 0, yMm, panel.widthMm(), yMm);
    double[] face = faceByColumn(plan, line, across, yMm);
    int[] wood = layers(plan, down);
    for (int y = 0; y < THICKNESS_PX; y++) {
      int pale = Colours.mix(wood[y], Colours.PAPER, 0.86);
      for (int x = 0; x < WIDTH_PX; x++) {
        canvas.set(left + x, top + y, (y + 0.5) / down < face[x] ? pale : wood[y]);
      }
    }
    drawFace(canvas, left, top, face, down);
    canvas.frame(left - 1, top - 1, WIDTH_PX + 2, THICKNESS_PX + 2, Colours.FAINT);
    drawAxis(canvas, plan, left, top, down);
    ScaleBar.draw(
        canvas,
        left,
        top + THICKNESS_PX + 24,
        across,
        panel.widthMm(),
        plan.terrain().frame().metresPerMm());
    PlyLegend.draw(canvas, left + WIDTH_PX + MARGIN, MARGIN, plan);
    return Png.write(canvas, 0);
  }

  private static double[] faceByColumn(
      Landscape plan, SectionLine line, double across, double yMm) {
    double[] face = new double[WIDTH_PX];
    double[] cut =
        plan.faces()
            .map(f -> f.depthsMm(new CellFrame(0, yMm - 0.5, 1 / across, 1, WIDTH_PX, 1)))
            .orElse(null);
    int span = 0;
    for (int x = 0; x < WIDTH_PX; x++) {
      double at = (x + 0.5) / across;
      while (span < line.spans().size() && line.spans().get(span).toMm() <= at) {
        span++;
      }
      boolean inside = span < line.spans().size() && line.spans().get(span).fromMm() <= at;
      face[x] = FinishedFace.depthMm(plan, inside ? line.spans().get(span).plyNumber() : 0);
      if (cut != null && !Double.isNaN(cut[x])) {
        face[x] = cut[x] + plan.job().allowance().sandingMm();
      }
    }
    return face;
  }

  /** The layer at the middle of every row of pixels; glue lines are at least one pixel high. */
  private static int[] layers(Landscape plan, double down) {
    int[] colours = new int[THICKNESS_PX];
    for (int y = 0; y < THICKNESS_PX; y++) {
      double depth = (y + 0.5) / down;
      colours[y] = GLUE;
      for (PlyDepth ply : plan.depths()) {
        if (depth >= ply.topMm() && depth < ply.bottomMm()) {
          boolean nearGlue = ply.topMm() > 0 && depth - ply.topMm() < 0.5 / down;
          colours[y] =
              nearGlue && plan.job().layup().glueLine().thicknessMm() > 0 ? GLUE : ply.ply().rgb();
        }
      }
    }
    return colours;
  }

  private static void drawFace(Canvas canvas, int left, int top, double[] face, double down) {
    int from = 0;
    for (int x = 1; x <= face.length; x++) {
      if (x == face.length || face[x] != face[from]) {
        double y = top + face[from] * down;
        canvas.line(left + from, y, left + x, y, 1.8, Colours.INK);
        if (x < face.length) {
          canvas.line(left + x, y, left + x, top + face[x] * down, 1.8, Colours.INK);
        }
        from = x;
      }
    }
  }

  private static void drawAxis(Canvas canvas, Landscape plan, int left, int top, double down) {
    canvas.text(MARGIN, top - 14, 9, Colours.FAINT, "depth, mm");
    double step = ScaleBar.lengthMm(plan.thicknessMm());
    for (int i = 0; i * step <= plan.thicknessMm() + 1e-9; i++) {
      double y = top + i * step * down;
      canvas.line(left - 8, y, left - 2, y, 1.2, Colours.FAINT);
      String text = Numbers.trimmed(i * step, 3);
      double width = StrokeAlphabet.width(text) * 10 / StrokeAlphabet.CAP_UNITS;
      canvas.text(left - 12 - width, y + 5, 10, Colours.INK, text);
    }
  }
}
