package plyscape.render;

import java.util.List;
import plyscape.bend.PlaceJudge;
import plyscape.bend.ShownCells;
import plyscape.layup.PlyDepth;
import plyscape.layup.Spot;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/**
 * A map of the risk that a place shows the wrong ply, in steps ({@link RiskStep}), from the
 * tolerances of layup, machine and sanding (src/contract.md, section 3). The errors of one panel
 * are shared by all of it: a share of panels, not of the area of one.
 */
public final class RiskPicture {

  private static final int LONGEST_PX = 900;
  private static final int MARGIN = 36;
  private static final int KEY = 420;

  private RiskPicture() {}

  /** A PNG file. */
  public static byte[] png(Landscape plan) {
    double width = plan.job().panel().widthMm();
    double height = plan.job().panel().heightMm();
    PlyRaster raster =
        PlyRaster.of(plan.tiling(), width, height, Math.max(width, height) / LONGEST_PX);
    Canvas canvas =
        new Canvas(
            raster.columns() + 3 * MARGIN + KEY,
            Math.max(raster.rows(), 420) + 2 * MARGIN,
            Colours.PAPER);
    RiskShades shades = RiskShades.of(plan);
    for (int y = 0; y < raster.rows(); y++) {
      for (int x = 0; x < raster.columns(); x++) {
        int ply = raster.plies()[y * raster.columns() + x];
        canvas.set(
            MARGIN + x, MARGIN + y, ply == 0 ? 0xd8d4cc : shades.of(FinishedFace.depth(plan, ply)));
      }
    }
    if (plan.depths().byPlace()) {
      byPlace(canvas, plan, raster);
    }
    int x = raster.columns() + 2 * MARGIN;
    key(canvas, x, plan);
    List<String> words = shades.words();
    for (int i = 0; i < words.size(); i++) {
      canvas.text(x, MARGIN + 346 + 18 * i, 10, Colours.INK, words.get(i));
    }
    return Png.write(canvas, 0);
  }

  /** Places that are judged by themselves, each as wide as they lie apart. */
  private static void byPlace(Canvas canvas, Landscape plan, PlyRaster raster) {
    double apart = ShownCells.apartMm(plan.tiling().carved());
    double px = raster.columns() / plan.job().panel().widthMm();
    double height = plan.job().panel().heightMm();
    for (Spot spot : plan.spots()) {
      int rgb = RiskStep.of(PlaceJudge.risk(plan.depths(), plan.shape(), spot)).rgb();
      int fromX = (int) Math.floor((spot.at().xMm() - apart / 2) * px);
      int fromY = (int) Math.floor((height - spot.at().yMm() - apart / 2) * px);
      int side = (int) Math.ceil(apart * px);
      for (int y = Math.max(0, fromY); y < Math.min(raster.rows(), fromY + side); y++) {
        for (int x = Math.max(0, fromX); x < Math.min(raster.columns(), fromX + side); x++) {
          if (raster.plies()[y * raster.columns() + x] == spot.ply()) {
            canvas.set(MARGIN + x, MARGIN + y, rgb);
          }
        }
      }
    }
  }

  private static void key(Canvas canvas, int x, Landscape plan) {
    canvas.text(x, MARGIN + 18, 15, Colours.INK, "Risk of a wrong colour");
    canvas.text(x, MARGIN + 42, 10, Colours.FAINT, "from all tolerances, each taken as 3 sigma");
    double total = 0;
    double[] areas = new double[RiskStep.values().length];
    for (PlyDepth depth : plan.depths()) {
      double area = PlyLegend.share(plan, depth.ply().number()) * plan.tiling().carved().area();
      areas[RiskStep.of(depth.risk()).ordinal()] += area;
      total += area * depth.risk();
    }
    for (RiskStep step : RiskStep.values()) {
      int y = MARGIN + 64 + 44 * step.ordinal();
      canvas.fill(x, y, 46, 32, step.rgb());
      canvas.frame(x, y, 46, 32, Colours.mix(step.rgb(), Colours.INK, 0.5));
      canvas.text(x + 60, y + 13, 11, Colours.INK, step.words());
      canvas.text(
          x + 60, y + 30, 10, Colours.FAINT, Numbers.fixed(areas[step.ordinal()], 1) + " mm2");
    }
    canvas.text(
        x,
        MARGIN + 320,
        11,
        Colours.INK,
        "Expected wrong area: " + Numbers.fixed(total, 3) + " mm2");
  }
}
