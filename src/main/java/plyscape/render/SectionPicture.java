package plyscape.render;

import plyscape.grid.CellFrame;
import plyscape.layup.PlyDepth;
import plyscape.lettering.StrokeAlphabet;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;
import plyscape.text.Template;

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

  private static final int LEFT = MARGIN + AXIS;
  private static final int TOP = MARGIN + HEAD;

  private final Landscape plan;
  private final double yMm;

  /** Pixels a mm. */
  private final double across;

  private final double down;
  private final Canvas canvas;

  private SectionPicture(Landscape plan, double yMm) {
    this.plan = plan;
    this.yMm = yMm;
    across = WIDTH_PX / plan.job().panel().widthMm();
    down = THICKNESS_PX / plan.thicknessMm();
    int height = Math.max(TOP + THICKNESS_PX + 80, PlyLegend.height(plan) + 2 * MARGIN);
    canvas = new Canvas(LEFT + WIDTH_PX + 2 * MARGIN + PlyLegend.WIDTH, height, Colours.PAPER);
  }

  /** A PNG file of the section through the middle of the carved area. */
  public static byte[] png(Landscape plan) {
    return png(plan, (plan.tiling().carved().minY() + plan.tiling().carved().maxY()) / 2);
  }

  /** A PNG file of the section at a panel Y, mm. */
  public static byte[] png(Landscape plan, double yMm) {
    return Png.write(new SectionPicture(plan, yMm).drawn(), 0);
  }

  private Canvas drawn() {
    double panelMm = plan.job().panel().widthMm();
    double[] face = faceByColumn(SectionLine.of(plan.tiling(), 0, yMm, panelMm, yMm));
    drawHead();
    drawWood(face);
    drawFace(face);
    canvas.frame(LEFT - 1, TOP - 1, WIDTH_PX + 2, THICKNESS_PX + 2, Colours.FAINT);
    drawAxis();
    ScaleBar.draw(
        canvas,
        LEFT,
        TOP + THICKNESS_PX + 24,
        across,
        panelMm,
        plan.terrain().frame().metresPerMm());
    PlyLegend.draw(canvas, LEFT + WIDTH_PX + MARGIN, MARGIN, plan);
    return canvas;
  }

  private void drawHead() {
    String where = Template.fill("Section at Y = %.3t mm, west to east", yMm);
    canvas.text(MARGIN, MARGIN + 14, 15, Colours.INK, where);
    String how =
        Template.fill(
            "Heights x %.1f. Dark lines are glue; pale wood is cut or sanded away.", down / across);
    canvas.text(MARGIN, MARGIN + 34, 10, Colours.FAINT, how);
  }

  /** The layers, pale above the face. */
  private void drawWood(double[] face) {
    int[] wood = layers();
    for (int y = 0; y < THICKNESS_PX; y++) {
      int pale = Colours.mix(wood[y], Colours.PAPER, 0.86);
      for (int x = 0; x < WIDTH_PX; x++) {
        canvas.set(LEFT + x, TOP + y, (y + 0.5) / down < face[x] ? pale : wood[y]);
      }
    }
  }

  private double[] faceByColumn(SectionLine line) {
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
  private int[] layers() {
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

  private void drawFace(double[] face) {
    int from = 0;
    for (int x = 1; x <= face.length; x++) {
      if (x == face.length || face[x] != face[from]) {
        double y = TOP + face[from] * down;
        canvas.line(LEFT + from, y, LEFT + x, y, 1.8, Colours.INK);
        if (x < face.length) {
          canvas.line(LEFT + x, y, LEFT + x, TOP + face[x] * down, 1.8, Colours.INK);
        }
        from = x;
      }
    }
  }

  private void drawAxis() {
    canvas.text(MARGIN, TOP - 14, 9, Colours.FAINT, "depth, mm");
    double step = ScaleBar.lengthMm(plan.thicknessMm());
    for (int i = 0; i * step <= plan.thicknessMm() + 1e-9; i++) {
      double y = TOP + i * step * down;
      canvas.line(LEFT - 8, y, LEFT - 2, y, 1.2, Colours.FAINT);
      String text = Numbers.trimmed(i * step, 3);
      double width = StrokeAlphabet.width(text) * 10 / StrokeAlphabet.CAP_UNITS;
      canvas.text(LEFT - 12 - width, y + 5, 10, Colours.INK, text);
    }
  }
}
