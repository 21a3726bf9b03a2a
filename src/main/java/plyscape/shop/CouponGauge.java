package plyscape.shop;

import java.util.List;
import plyscape.files.CsvRows;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.layup.PlyDepth;
import plyscape.text.Numbers;
import plyscape.text.Visible;

/**
 * The papers of a coupon: a gauge to lay beside it, true to size, and the file for the readings.
 */
public final class CouponGauge {

  private static final double LEFT = 10;
  private static final double TEXT = 3;
  private static final double LINE = 5;

  private CouponGauge() {}

  /**
   * The gauge as an SVG page: every pad where it lies, with its depth, in the colour that is
   * expected on it.
   */
  public static String svg(Coupon coupon, Layup layup, Depths depths) {
    double width = Math.max(190, coupon.widthMm() + 2 * LEFT);
    double listTop = 34 + coupon.heightMm() + 12;
    double height = listTop + LINE * (depths.plies() + 1) + 24;
    SvgPage svg = new SvgPage(width, height, "Coupon gauge");
    svg.bold(LEFT, 9, 4.4, SvgPage.fitted("Coupon gauge: " + layup.name(), width - 2 * LEFT, 4.4));
    double y =
        svg.paragraph(
            LEFT,
            14.5,
            width - 2 * LEFT,
            TEXT,
            "Print at 100 %: the bar must be 50 mm long. Pads as seen from above, with their depth"
                + " in mm, in the colour that is expected. Zero Z on the top face of the coupon"
                + " itself.");
    svg.line(LEFT, y + 1, LEFT + 50, y + 1, "#000000", 0.4);
    svg.line(LEFT, y - 0.5, LEFT, y + 2.5, "#000000", 0.2)
        .line(LEFT + 50, y - 0.5, LEFT + 50, y + 2.5, "#000000", 0.2);
    double top = 34;
    svg.rectangle(
        LEFT, top, coupon.widthMm(), coupon.heightMm(), depths.top().ply().colour(), "#000000");
    for (Coupon.Pad pad : coupon.pads()) {
      pad(svg, pad, LEFT, top + coupon.heightMm(), depths);
    }
    readings(svg, coupon, depths, listTop);
    svg.paragraph(
        LEFT,
        listTop + LINE * (depths.plies() + 1) + 5,
        width - 2 * LEFT,
        TEXT,
        "Write the two depths of each boundary into readings.csv (from: last pad of the upper"
            + " colour, to: first pad of the lower one), cut more than one coupon if the colours"
            + " are hard to tell, then run plyscape calibrate.");
    return svg.text();
  }

  private static void pad(SvgPage svg, Coupon.Pad pad, double left, double bottom, Depths depths) {
    double x = left + pad.box().minX();
    double y = bottom - pad.box().maxY();
    PlyDepth shown = expected(pad.depthMm(), depths);
    svg.rectangle(x, y, pad.box().width(), pad.box().height(), shown.ply().colour(), "#000000");
    String ink = SvgPage.inkOn(shown.ply().rgb());
    double size = Math.min(1.9, pad.box().width() / 2.4);
    svg.ink(x + 0.3, y + 2.4, size, String.valueOf(pad.number()), ink);
    svg.ink(x + 0.3, y + pad.box().height() - 0.8, size, Numbers.trimmed(pad.depthMm(), 3), ink);
  }

  /** The ply expected at a depth; in a glue line the one below. */
  public static PlyDepth expected(double depthMm, Depths depths) {
    for (PlyDepth d : depths) {
      if (depthMm <= d.bottomMm()) {
        return d;
      }
    }
    return depths.of(depths.plies());
  }

  private static void readings(SvgPage svg, Coupon coupon, Depths depths, double top) {
    svg.bold(LEFT, top, TEXT, "boundary");
    svg.bold(LEFT + 78, top, TEXT, "expected at");
    svg.bold(LEFT + 108, top, TEXT, "last pad above");
    svg.bold(LEFT + 140, top, TEXT, "first pad below");
    double y = top + LINE;
    for (int i = 0; i + 1 < depths.plies(); i++) {
      PlyDepth upper = depths.of(i + 1);
      PlyDepth lower = depths.of(i + 2);
      svg.rectangle(LEFT, y - 2.6, 3, 3, upper.ply().colour(), "#000000");
      svg.rectangle(LEFT + 3, y - 2.6, 3, 3, lower.ply().colour(), "#000000");
      svg.left(
          LEFT + 8,
          y,
          TEXT,
          SvgPage.fitted(upper.ply().name() + " / " + lower.ply().name(), 68, TEXT));
      boolean unseen = coupon.unseen().contains(upper.ply().number());
      svg.left(
          LEFT + 78,
          y,
          TEXT,
          Numbers.fixed(upper.bottomMm(), 2)
              + " +-"
              + Numbers.fixed(upper.bottomToleranceMm(), 2)
              + (unseen ? " too deep" : ""));
      svg.line(LEFT + 110, y + 0.5, LEFT + 132, y + 0.5, "#000000", 0.2);
      svg.line(LEFT + 142, y + 0.5, LEFT + 164, y + 0.5, "#000000", 0.2);
      y += LINE;
    }
  }

  /**
   * {@code readings.csv} with a row to fill in for each boundary that the coupon can show; rows
   * left empty are passed over.
   *
   * @param places of several coupons on a panel, which stand in columns x and y; empty for one
   *     beside it
   */
  public static String readingsCsv(Coupon coupon, Depths depths, List<PanelPoint> places) {
    StringBuilder out = new StringBuilder();
    out.append(
        "# Depths in mm below the top face, read off the coupon. A row left empty is passed over;"
            + " more rows for the\n");
    out.append(
        "# same ply are welcome. from: the last pad on which the ply is seen. to: the first pad"
            + " that shows the next.\n");
    out.append(
        "# Other readings may be given as ply,edge,depth,tolerance in a file of their own, edge"
            + " being top or bottom.\n");
    out.append(
        "# A column pad takes the number of that last pad instead. Columns x and y: where on the"
            + " panel, mm.\n");
    out.append(CouponPads.line(coupon.pads()));
    out.append(places.isEmpty() ? "ply,from,to\n" : "ply,from,to,x,y\n");
    List<String> ends =
        places.isEmpty()
            ? List.of("")
            : places.stream()
                .map(p -> "," + Numbers.trimmed(p.xMm(), 3) + "," + Numbers.trimmed(p.yMm(), 3))
                .toList();
    for (String end : ends) {
      for (PlyDepth d : depths.allButBottom()) {
        if (!coupon.unseen().contains(d.ply().number())) {
          out.append(CsvRows.quoted(Visible.line(d.ply().name()))).append(",,");
          out.append(end).append('\n');
        }
      }
    }
    return out.toString();
  }
}
