package plyscape.render;

import java.util.ArrayList;
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

  private static final List<String> UNSANDED =
      List.of(
          "Where a block of sandpaper doesn't reach, a floor may",
          "stay as it was cut: it is judged for both.");

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
        canvas.set(MARGIN + x, MARGIN + y, ply == 0 ? 0xd8d4cc : shades.of(plan.depths().of(ply)));
      }
    }
    List<Judged> cells = cells(plan);
    if (!cells.isEmpty()) {
      // First wider than a cell, for what lies along edges where no cell of the ply has its centre.
      paint(canvas, plan, raster, cells, 3);
      paint(canvas, plan, raster, cells, 1);
    }
    int x = raster.columns() + 2 * MARGIN;
    key(canvas, x, plan, cells);
    boolean unsanded = cells.stream().anyMatch(cell -> !cell.spot().sanded());
    List<String> words = cells.isEmpty() ? shades.words() : unsanded ? UNSANDED : List.of();
    for (int i = 0; i < words.size(); i++) {
      canvas.text(x, MARGIN + 346 + 18 * i, 10, Colours.INK, words.get(i));
    }
    return Png.write(canvas, 0);
  }

  /**
   * A place with its own risk.
   *
   * @param otherThanItsPly whether that is in another step than its ply's mean
   */
  private record Judged(Spot spot, double risk, boolean otherThanItsPly) {}

  /**
   * Places that are judged by themselves: all where depths go by place, else those that sanding may
   * not reach; none where that makes no difference.
   */
  private static List<Judged> cells(Landscape plan) {
    List<Judged> cells = new ArrayList<>();
    for (Spot spot : plan.spots()) {
      double risk = PlaceJudge.risk(plan.depths(), plan.shape(), spot);
      RiskStep ply = RiskStep.of(plan.depths().of(spot.ply()).risk());
      cells.add(new Judged(spot, risk, RiskStep.of(risk) != ply));
    }
    boolean differ = cells.stream().anyMatch(Judged::otherThanItsPly);
    return differ || plan.depths().byPlace() ? cells : List.of();
  }

  /** Each cell as many times as wide as places lie apart, where its ply shows. */
  private static void paint(
      Canvas canvas, Landscape plan, PlyRaster raster, List<Judged> cells, int wider) {
    double apart = wider * ShownCells.apartMm(plan.tiling().carved());
    double px = raster.columns() / plan.job().panel().widthMm();
    double height = plan.job().panel().heightMm();
    for (Judged cell : cells) {
      Spot spot = cell.spot();
      int rgb = RiskStep.of(cell.risk()).rgb();
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

  private static void key(Canvas canvas, int x, Landscape plan, List<Judged> cells) {
    canvas.text(x, MARGIN + 18, 15, Colours.INK, "Risk of a wrong colour");
    canvas.text(x, MARGIN + 42, 10, Colours.FAINT, "from all tolerances, each taken as 3 sigma");
    double total = 0;
    double[] areas = new double[RiskStep.values().length];
    for (PlyDepth depth : plan.depths()) {
      double area = PlyLegend.share(plan, depth.ply().number()) * plan.tiling().carved().area();
      areas[RiskStep.of(depth.risk()).ordinal()] += cells.isEmpty() ? area : 0;
      total += area * depth.risk();
    }
    double cell = plan.tiling().carved().area() / Math.max(1, cells.size());
    cells.forEach(c -> areas[RiskStep.of(c.risk()).ordinal()] += cell);
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
