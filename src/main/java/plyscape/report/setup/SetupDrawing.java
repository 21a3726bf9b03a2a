package plyscape.report.setup;

import plyscape.machine.Machine;
import plyscape.plan.MotionSpan;
import plyscape.plan.PanelPlan;
import plyscape.render.RegionLines;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * The panel as it lies on the table, seen from above, black lines on white: outline and size, the
 * regions thin, zero with its axes, hatched the field that the cutters sweep, dotted the way of
 * their tips. Drawn in mm of the panel, text in shares of its longer side.
 */
final class SetupDrawing {

  private final PanelPlan plan;
  private final Clearways ways;
  private final double width;
  private final double height;

  /** A hundredth of the drawing's longer side, mm of the panel. */
  private final double unit;

  private final StringBuilder out = new StringBuilder();

  private SetupDrawing(PanelPlan plan) {
    this.plan = plan;
    ways = Clearways.of(plan);
    width = plan.job().panel().widthMm();
    height = plan.job().panel().heightMm();
    unit = Math.max(width, height) / 100;
  }

  /** The drawing as an SVG element. */
  static String svg(PanelPlan plan) {
    return new SetupDrawing(plan).draw();
  }

  private String draw() {
    double rim = 13 * unit;
    out.append(
        Template.fill(
            "<svg viewBox=\"%.3t %.3t %.3t %.3t\" role=\"img\" aria-label=\"The panel from"
                + " above\">\n",
            -rim, -rim, width + 2 * rim, height + 2 * rim));
    hatchPattern();
    rectangle(
        ways.swept(), "fill=\"url(#hatch)\" stroke=\"#000\" stroke-dasharray=\"3 1.2\"", 0.35);
    out.append("<path d=\"")
        .append(RegionLines.data(plan.tiling(), height, 0.35 * unit))
        .append("\" fill=\"none\" stroke=\"#666\" stroke-width=\"")
        .append(mm(0.15 * unit))
        .append("\"/>\n");
    out.append("<rect id=\"stock\" width=\"" + mm(width) + "\" height=\"" + mm(height))
        .append("\" fill=\"none\" stroke=\"#000\" stroke-width=\"" + mm(0.7 * unit) + "\"/>\n");
    rectangle(ways.way(), "fill=\"none\" stroke=\"#000\" stroke-dasharray=\"0.4 1.1\"", 0.4);
    out.append(SetupMarks.svg(plan, unit));
    sizes();
    zero();
    return out.append("</svg>\n").append(key(SetupMarks.key(plan))).toString();
  }

  private void hatchPattern() {
    String side = mm(2.2 * unit);
    out.append("<defs><pattern id=\"hatch\" width=\"" + side + "\" height=\"" + side)
        .append("\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">")
        .append("<path d=\"M0 0V" + side + "\" stroke=\"#999\" stroke-width=\"")
        .append(mm(0.25 * unit) + "\"/></pattern></defs>\n");
  }

  /** A span as a rectangle; dashes in hundredths of the drawing. */
  private void rectangle(MotionSpan span, String style, double stroke) {
    int from = style.indexOf("dasharray=\"") + 11;
    int to = style.indexOf('"', from);
    StringBuilder dashes = new StringBuilder();
    for (String dash : style.substring(from, to).split(" ")) {
      dashes.append(mm(Double.parseDouble(dash) * unit)).append(' ');
    }
    out.append("<rect x=\"" + mm(span.minX()) + "\" y=\"" + mm(height - span.maxY()))
        .append("\" width=\"" + mm(span.maxX() - span.minX()))
        .append("\" height=\"" + mm(span.maxY() - span.minY()) + "\" ")
        .append(style, 0, from)
        .append(dashes.toString().trim())
        .append(style.substring(to))
        .append(" stroke-width=\"" + mm(stroke * unit) + "\"/>\n");
  }

  private void sizes() {
    double off = 4.5 * unit;
    line(0, -off, width, -off, 0.25);
    line(0, -off - unit, 0, -off + unit, 0.25);
    line(width, -off - unit, width, -off + unit, 0.25);
    text(width / 2, -off - 1.5 * unit, "middle", Numbers.trimmed(width, 2) + " mm", 0);
    double x = width + off;
    line(x, 0, x, height, 0.25);
    line(x - unit, 0, x + unit, 0, 0.25);
    line(x - unit, height, x + unit, height, 0.25);
    text(x + 4.2 * unit, height / 2, "middle", Numbers.trimmed(height, 2) + " mm", -90);
  }

  /** A ring with two black quarters, as on any target, and the axes from it. */
  private void zero() {
    double x = ways.frame().zeroX();
    double y = height - ways.frame().zeroY();
    double r = 2.6 * unit;
    out.append("<g id=\"zero\"><circle cx=\"" + mm(x) + "\" cy=\"" + mm(y) + "\" r=\"" + mm(r))
        .append("\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"" + mm(0.5 * unit) + "\"/>\n");
    for (int sign : new int[] {1, -1}) {
      out.append("<path d=\"M" + mm(x) + " " + mm(y) + "v" + mm(-sign * r) + "A" + mm(r) + " ")
          .append(mm(r) + " 0 0 1 " + mm(x + sign * r) + " " + mm(y) + "Z\"/>\n");
    }
    boolean below = plan.job().machine().zero() != Machine.Zero.CENTRE;
    double axis = 16 * unit;
    double alongY = below ? height + 6.5 * unit : y;
    double alongX = below ? -6.5 * unit : x;
    arrow(below ? 0 : x, alongY, axis, 0, "X");
    arrow(alongX, below ? height : y, 0, -axis, "Y");
    out.append("</g>\n");
  }

  private void arrow(double x, double y, double dx, double dy, String name) {
    double length = Math.hypot(dx, dy);
    double ux = dx / length;
    double uy = dy / length;
    double tip = 1.8 * unit;
    line(x, y, x + dx, y + dy, 0.5);
    out.append("<path d=\"M" + mm(x + dx + ux * tip) + " " + mm(y + dy + uy * tip))
        .append("L" + mm(x + dx - uy * tip) + " " + mm(y + dy + ux * tip))
        .append("L" + mm(x + dx + uy * tip) + " " + mm(y + dy - ux * tip) + "Z\"/>\n");
    text(x + dx + ux * 5 * unit, y + dy + uy * 4 * unit + 1.4 * unit, "middle", name, 0);
  }

  private void line(double x1, double y1, double x2, double y2, double stroke) {
    out.append("<path d=\"M" + mm(x1) + " " + mm(y1) + "L" + mm(x2) + " " + mm(y2))
        .append("\" stroke=\"#000\" stroke-width=\"" + mm(stroke * unit) + "\"/>\n");
  }

  private void text(double x, double y, String anchor, String words, double turn) {
    out.append("<text x=\"" + mm(x) + "\" y=\"" + mm(y) + "\" text-anchor=\"" + anchor)
        .append("\" font-size=\"" + mm(4.2 * unit) + "\"")
        .append(
            turn == 0 ? "" : " transform=\"rotate(" + mm(turn) + " " + mm(x) + " " + mm(y) + ")\"")
        .append(">" + words + "</text>\n");
  }

  private static String key(String more) {
    return "<p>Round mark: X0 Y0. Hatched: swept below safe height, nothing may stand there."
        + " Dotted: way of the tip, from zero. X to the right, Y away from you: the top of the"
        + " map."
        + more
        + "</p>\n";
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
