package plyscape.shop;

import plyscape.text.Contrast;
import plyscape.text.Markup;
import plyscape.text.Numbers;
import plyscape.text.Template;
import plyscape.text.Visible;

/**
 * A page of paper as SVG, to be printed at its true size: 1 user unit is 1 mm, Y down, no
 * transforms, no fonts but the reader's sans-serif. Built by calls, ended by {@link #text()}.
 */
final class SvgPage {

  /**
   * Mean width of a letter as a share of the font's size, for fitting text into a column;
   * sans-serif runs near 0.5.
   */
  private static final double LETTER = 0.54;

  private final StringBuilder out = new StringBuilder();

  SvgPage(double widthMm, double heightMm, String title) {
    String w = mm(widthMm);
    String h = mm(heightMm);
    out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    out.append(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""
                + w
                + "mm\" height=\""
                + h
                + "mm\" viewBox=\"0 0 ")
        .append(
            w + " " + h + "\" font-family=\"sans-serif\">\n<title>" + escape(title) + "</title>\n");
    rectangle(0, 0, widthMm, heightMm, "#ffffff", "none");
  }

  SvgPage rectangle(double x, double y, double width, double height, String fill, String stroke) {
    out.append(
            Template.fill(
                "<rect x=\"%.3t\" y=\"%.3t\" width=\"%.3t\" height=\"%.3t", x, y, width, height))
        .append("\" fill=\"" + fill + "\" stroke=\"" + stroke + "\" stroke-width=\"0.15\"/>\n");
    return this;
  }

  SvgPage line(double x1, double y1, double x2, double y2, String stroke, double width) {
    out.append(
            Template.fill(
                "<path d=\"M%.3t %.3t L%.3t %.3t\" fill=\"none\" stroke=\"", x1, y1, x2, y2))
        .append(stroke + "\" stroke-width=\"" + mm(width) + "\"/>\n");
    return this;
  }

  /** Text with its left end at x and its base line at y; size in mm. */
  SvgPage left(double x, double y, double size, String text) {
    return text(x, y, size, text, "start", "normal");
  }

  /** The same, bold. */
  SvgPage bold(double x, double y, double size, String text) {
    return text(x, y, size, text, "start", "bold");
  }

  /** Text with its right end at x. */
  SvgPage right(double x, double y, double size, String text) {
    return text(x, y, size, text, "end", "normal");
  }

  /** The same, bold. */
  SvgPage boldRight(double x, double y, double size, String text) {
    return text(x, y, size, text, "end", "bold");
  }

  /** A paragraph broken to a width; gives the base line after its last line. */
  double paragraph(double x, double y, double width, double size, String text) {
    int most = Math.max(10, (int) (width / (size * LETTER)));
    double at = y;
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      if (line.length() > 0 && line.length() + 1 + word.length() > most) {
        left(x, at, size, line.toString());
        at += size * 1.3;
        line.setLength(0);
      }
      line.append(line.length() > 0 ? " " : "").append(word);
    }
    left(x, at, size, line.toString());
    return at + size * 1.3;
  }

  /** Text cut to a width, with an ellipsis where something is missing. */
  static String fitted(String text, double width, double size) {
    int most = Math.max(3, (int) (width / (size * LETTER)));
    int letters = text.codePointCount(0, text.length());
    return letters <= most
        ? text
        : text.substring(0, text.offsetByCodePoints(0, most - 1)) + "\u2026";
  }

  /** Black or white, whichever reads better on a colour. */
  static String inkOn(int rgb) {
    return Contrast.blackOn(rgb) ? "#000000" : "#ffffff";
  }

  SvgPage ink(double x, double y, double size, String text, String fill) {
    out.append(
        Template.fill(
            "<text x=\"%.3t\" y=\"%.3t\" font-size=\"%.3t\" fill=\"%s\">%s</text>\n",
            x, y, size, fill, escape(text)));
    return this;
  }

  /** The whole page. */
  String text() {
    return out + "</svg>\n";
  }

  private SvgPage text(double x, double y, double size, String text, String anchor, String weight) {
    out.append("<text x=\"" + mm(x) + "\" y=\"" + mm(y) + "\" font-size=\"" + mm(size) + "\"")
        .append(anchor.equals("start") ? "" : " text-anchor=\"" + anchor + "\"")
        .append(weight.equals("normal") ? "" : " font-weight=\"" + weight + "\"")
        .append(">" + escape(text) + "</text>\n");
    return this;
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }

  private static String escape(String text) {
    return Markup.escape(Visible.line(text));
  }
}
