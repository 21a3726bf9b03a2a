package plyscape.shop;

import plyscape.layup.Ply;
import plyscape.layup.advice.BalanceCheck;
import plyscape.text.Numbers;

/**
 * The pressing sheet as one page for the shop wall: as large as fits between margins of 10 mm on A4
 * and on US Letter.
 */
public final class PressingPage {

  private static final double WIDTH = 190;
  private static final double HEIGHT = 255;
  private static final double LEFT = 4;
  private static final double RIGHT = 186;

  /** Greatest height of a row of the sheet list, and the room that the list may take. */
  private static final double ROW = 10;

  private static final double LIST = 110;

  private PressingPage() {}

  /** The page as SVG. */
  public static String svg(PressingSheet sheet) {
    SvgPage svg = new SvgPage(WIDTH, HEIGHT, "Pressing sheet");
    svg.bold(
        LEFT, 9, 6, SvgPage.fitted("Pressing sheet: " + sheet.layup().name(), RIGHT - LEFT, 6));
    double y = list(svg, sheet, 13) + 7;
    for (String fact : PressingText.facts(sheet)) {
      y = svg.paragraph(LEFT, y, RIGHT - LEFT, 3.8, fact) + 1;
    }
    y += 2;
    svg.bold(LEFT, y, 3.8, "Balance");
    y += 5;
    if (sheet.findings().isEmpty()) {
      y = svg.paragraph(LEFT, y, RIGHT - LEFT, 3.2, "Odd, crossed and the same from both sides.");
    }
    double findingsEnd = HEIGHT - 52;
    int shown = 0;
    for (BalanceCheck.Finding f : sheet.findings()) {
      if (y > findingsEnd - 10) {
        int left = sheet.findings().size() - shown;
        y =
            svg.paragraph(
                LEFT, y, RIGHT - LEFT, 3.2, "... and " + left + " more: see the text sheet.");
        break;
      }
      y = svg.paragraph(LEFT, y, RIGHT - LEFT, 3.2, "\u2022 " + f.what() + "; " + f.mend());
      shown++;
    }
    y = Math.max(y + 3, HEIGHT - 48);
    svg.line(LEFT, y - 4, RIGHT, y - 4, "#000000", 0.3);
    for (String caution : sheet.cautions()) {
      y = svg.paragraph(LEFT, y, RIGHT - LEFT, 3, "! " + caution);
    }
    svg.left(
        LEFT,
        HEIGHT - 6,
        3,
        "Pressed on ____________   by ____________   glue batch ____________   thickness measured"
            + " ________ mm");
    return svg.text();
  }

  private static double list(SvgPage svg, PressingSheet sheet, double top) {
    double row = Math.min(ROW, LIST / (sheet.veneers().size() + 1));
    double size = Math.min(3.9, row * 0.62);
    double base = row * 0.5 + size * 0.35;
    String[] heads = {"cut", "ply", "", "name", "wood"};
    double[] at = {LEFT, LEFT + 9, LEFT + 17, LEFT + 34, LEFT + 82};
    for (int c = 0; c < heads.length; c++) {
      svg.bold(at[c], top + base, size, heads[c]);
    }
    svg.boldRight(LEFT + 124, top + base, size, "thick");
    svg.boldRight(LEFT + 156, top + base, size, "along grain");
    svg.boldRight(RIGHT, top + base, size, "across, mm");
    double y = top + row;
    for (PressingSheet.Veneer v : sheet.veneers()) {
      Ply ply = v.ply();
      svg.line(LEFT, y, RIGHT, y, "#bbbbbb", 0.12);
      svg.rectangle(LEFT, y + row * 0.2, row * 0.6, row * 0.6, "#ffffff", "#000000");
      svg.left(at[1], y + base, size, String.valueOf(ply.number()));
      svg.rectangle(at[2], y + row * 0.12, 14, row * 0.76, ply.colour(), "#000000");
      grain(svg, at[2] + 7, y + row / 2, row * 0.3, v.turned(), SvgPage.inkOn(ply.rgb()));
      svg.left(at[3], y + base, size, SvgPage.fitted(ply.name(), 46, size));
      svg.left(at[4], y + base, size, SvgPage.fitted(ply.wood(), 31, size));
      svg.right(LEFT + 124, y + base, size, Numbers.fixed(ply.thicknessMm(), 2));
      svg.right(LEFT + 156, y + base, size, Numbers.trimmed(v.alongMm(), 1));
      svg.right(RIGHT, y + base, size, Numbers.trimmed(v.acrossMm(), 1));
      y += row;
    }
    svg.line(LEFT, y, RIGHT, y, "#bbbbbb", 0.12);
    return y;
  }

  /** A stroke along the grain; Y of the panel is up, of the page down. */
  private static void grain(
      SvgPage svg, double x, double y, double half, double degrees, String ink) {
    double dx = half * Math.cos(Math.toRadians(degrees));
    double dy = half * Math.sin(Math.toRadians(degrees));
    for (int i = -1; i <= 1; i++) {
      double ox = -dy * 0.55 * i;
      double oy = -dx * 0.55 * i;
      svg.line(x - dx + ox, y + dy + oy, x + dx + ox, y - dy + oy, ink, 0.2);
    }
  }
}
