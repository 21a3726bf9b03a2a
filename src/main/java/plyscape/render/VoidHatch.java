package plyscape.render;

import java.util.stream.IntStream;
import plyscape.grid.Box;
import plyscape.job.GroundCover.Voids;
import plyscape.plan.Landscape;
import plyscape.terrain.VoidCells;

/** Slanting lines over ground that had no value and was made up, where that isn't small. */
final class VoidHatch {

  /** From line to line along a row, pixels, and a line's width. */
  private static final int STEP_PX = 12;

  private static final int LINE_PX = 2;

  /** How much of a line is ink. */
  private static final double INK = 0.55;

  private VoidHatch() {}

  /** Draws on the panel from above, edge to edge. */
  static void draw(Canvas top, Landscape plan, double pxPerMm) {
    VoidCells voids = plan.terrain().voids();
    Voids.Rule rule = plan.job().terrain().options().cover().voids().rule();
    boolean filled = rule == Voids.Rule.FILL || rule == Voids.Rule.FILL_SMALL;
    if (!filled || voids.mask() == null || voids.small()) {
      return;
    }
    Box carved = plan.terrain().frame().panel();
    double heightMm = plan.job().panel().heightMm();
    int[] pixels = top.pixels();
    int width = top.width();
    IntStream.range(0, top.height())
        .parallel()
        .forEach(
            row -> {
              double y = heightMm - (row + 0.5) / pxPerMm;
              for (int column = 0; column < width; column++) {
                double x = (column + 0.5) / pxPerMm;
                if ((column + row) % STEP_PX < LINE_PX && carved.contains(x, y) && voids.at(x, y)) {
                  int i = row * width + column;
                  pixels[i] = Colours.mix(Colours.INK, pixels[i], INK);
                }
              }
            });
  }
}
