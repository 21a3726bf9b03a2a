package plyscape.render;

import java.util.List;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.layup.PlyDepth;
import plyscape.lettering.StrokeAlphabet;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/**
 * The list of plies beside a picture: number on a swatch, name, finished and cut depth, share of
 * the carved area.
 */
final class PlyLegend {

  /** Width in pixels that the list needs. */
  static final int WIDTH = 430;

  private static final int ROW = 52;

  /** Plies that are listed at most. */
  private static final int MOST = 30;

  private PlyLegend() {}

  /** Height in pixels for a plan. */
  static int height(Landscape plan) {
    return 92 + listed(plan).size() * ROW;
  }

  /**
   * All plies of a usual layup; of a very thick one only those that show, and not more than a
   * picture can hold.
   */
  private static List<PlyDepth> listed(Landscape plan) {
    return plan.depths().plies() <= MOST
        ? plan.depths().stream().toList()
        : plan.depths().stream()
            .filter(depth -> share(plan, depth.ply().number()) > 0)
            .limit(MOST)
            .toList();
  }

  /** Draws the list with its left top corner at the given pixel. */
  static void draw(Canvas canvas, int x, int y, Landscape plan) {
    canvas.text(x, y + 20, 17, Colours.INK, shorten(plan.job().title(), WIDTH / 17.0 * 6));
    canvas.text(
        x, y + 48, 10, Colours.FAINT, "Depths below the top face of the pressed panel, mm;");
    canvas.text(x, y + 66, 10, Colours.FAINT, "share of the carved area.");
    int row = y + 88;
    for (PlyDepth depth : listed(plan)) {
      boolean shows = share(plan, depth.ply().number()) > 0;
      int colour = depth.ply().rgb();
      canvas.fill(x, row, 46, 38, colour);
      canvas.frame(x, row, 46, 38, Colours.mix(colour, Colours.INK, 0.5));
      String number = Integer.toString(depth.ply().number());
      double width = StrokeAlphabet.width(number) * 13 / StrokeAlphabet.CAP_UNITS;
      canvas.text(x + 24 - width / 2, row + 26, 13, Colours.inkOn(colour), number);
      int ink = shows ? Colours.INK : Colours.FAINT;
      canvas.text(x + 60, row + 14, 13, ink, shorten(depth.ply().name(), (WIDTH - 60) / 13.0 * 6));
      canvas.text(
          x + 60,
          row + 35,
          10,
          shows ? Colours.mix(Colours.INK, Colours.PAPER, 0.25) : Colours.FAINT,
          line(plan, depth, shows));
      row += ROW;
    }
  }

  private static String line(Landscape plan, PlyDepth depth, boolean shows) {
    if (!shows) {
      return Numbers.fixed(depth.topMm(), 2)
          + " to "
          + Numbers.fixed(depth.bottomMm(), 2)
          + ", does not show";
    }
    int number = depth.ply().number();
    String finished =
        plan.cutMm(number).open()
            ? ""
            : ", finished " + Numbers.fixed(FinishedFace.depthMm(plan, number), 3);
    return plan.cutMm(number).cutText()
        + finished
        + ", "
        + Numbers.fixed(100 * share(plan, number), 1)
        + " %"
        + (depth.reliable() ? "" : "  (too thin!)");
  }

  /** Share of the carved area that shows a ply, 0 to 1. */
  static double share(Landscape plan, int plyNumber) {
    MultiPolygon area = plan.tiling().exposed().get(plyNumber);
    return area == null ? 0 : area.getArea() / plan.tiling().carved().area();
  }

  /** The text, or its beginning and two dots if it is wider than so many letter units. */
  static String shorten(String text, double units) {
    if (StrokeAlphabet.width(text) <= units) {
      return text;
    }
    int end = text.length();
    while (end > 0 && StrokeAlphabet.width(text.substring(0, end) + "..") > units) {
      end = text.offsetByCodePoints(end, -1);
    }
    return text.substring(0, end) + "..";
  }
}
