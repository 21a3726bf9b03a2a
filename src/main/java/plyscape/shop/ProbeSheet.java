package plyscape.shop;

import java.util.List;
import java.util.function.IntUnaryOperator;
import plyscape.grid.Box;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.text.Markup;
import plyscape.text.Numbers;
import plyscape.text.Visible;

/**
 * Pages to print for a person with a dial gauge and a pencil: where to touch, in which order, and
 * tables to fill in.
 */
public final class ProbeSheet {

  private static final String STYLE =
      "<style>@page{size:A4;margin:14mm}body{font:10pt/1.4 sans-serif;color:#111;max-width:182mm;"
          + "margin:0 auto}h1{font-size:15pt}table{border-collapse:collapse;margin:3mm 0;"
          + "break-inside:auto}td,th{border:.2mm solid #555;padding:1mm 2mm;text-align:right}"
          + "tr{break-inside:avoid}td.w{min-width:22mm}th.l,td.l{text-align:left}"
          + ".cols{columns:3}.cols table{margin:0 0 2mm}svg{display:block;margin:3mm 0}</style>";

  private final StringBuilder out = new StringBuilder();
  private final double widthMm;
  private final double heightMm;

  private ProbeSheet(String title, double widthMm, double heightMm) {
    this.widthMm = widthMm;
    this.heightMm = heightMm;
    out.append("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>");
    out.append(text(title)).append("</title>").append(STYLE).append("</head><body>\n<h1>");
    out.append(text(title)).append("</h1>\n");
  }

  /**
   * The page for the heights of the top face.
   *
   * @param zero where X0 Y0 of the programs is, in words
   */
  public static String heights(
      String job, Box panel, String zero, ProbePlaces places, boolean program) {
    ProbeSheet sheet =
        new ProbeSheet("Heights of the top face: " + job, panel.width(), panel.height());
    sheet.paragraph(
        "Clamp the panel as it will be cut, set Z0 as for the programs, and leave it so. Touch the"
            + " places in the order of their numbers, with a dial gauge in the spindle or a touch"
            + " probe, spindle off. Write what Z shows in mm at first touch: higher wood gives a"
            + " larger number.");
    sheet.paragraph(
        "Sign, once: slip a sheet of paper (about 0.10 mm) under the tip at any place. The number"
            + " must grow by as much. If it falls, all signs are turned: a hill would be cut as a"
            + " hollow, and no check can see that.");
    sheet.paragraph(
        "X0 Y0 of the programs: "
            + zero
            + ". x and y here count from the lower left"
            + " corner of the panel, in mm. Type z into top.csv and name that file in the job:"
            + " panel: {top_map: {file: top.csv}}."
            + (program ? " probe.nc touches all places by itself; read its head first." : ""));
    sheet.drawing(places.places(), true);
    sheet.heightTables(places);
    return sheet.end();
  }

  /** The page for where the plies end on the four edges. */
  public static String edges(Layup layup, Box panel, List<PanelPoint> places) {
    ProbeSheet sheet =
        new ProbeSheet("Plies on the edges: " + layup.name(), panel.width(), panel.height());
    sheet.paragraph(
        "Sand the edge smooth at the marked places and read, through a glass with a scale or with"
            + " the tip of a dial gauge, how deep below the top face each ply ends: its bottom, in"
            + " mm, counted from the top face. One place tells of that place; all four edges tell"
            + " of the whole panel. Type the figures into edges.csv and give it to plyscape"
            + " calibrate.");
    sheet.drawing(places, false);
    sheet.edgeTable(layup, places);
    return sheet.end();
  }

  private void paragraph(String words) {
    out.append("<p>").append(text(words)).append("</p>\n");
  }

  private void drawing(List<PanelPoint> places, boolean way) {
    double scale = Math.min(150 / widthMm, 120 / heightMm);
    double w = widthMm * scale;
    double h = heightMm * scale;
    out.append("<svg width=\"").append(mm(w + 16)).append("mm\" height=\"").append(mm(h + 16));
    out.append("mm\" viewBox=\"-8 -8 ").append(mm(w + 16)).append(' ').append(mm(h + 16));
    out.append("\" font-family=\"sans-serif\" font-size=\"3\">");
    out.append("<rect width=\"").append(mm(w)).append("\" height=\"").append(mm(h));
    out.append("\" fill=\"#f7f3ea\" stroke=\"#333\" stroke-width=\".4\"/>");
    out.append("<text x=\"0\" y=\"").append(mm(h + 6)).append("\">x 0, y 0</text>");
    if (way) {
      out.append("<polyline fill=\"none\" stroke=\"#999\" stroke-width=\".3\" points=\"");
      for (PanelPoint p : places) {
        out.append(mm(p.xMm() * scale)).append(',').append(mm(h - p.yMm() * scale)).append(' ');
      }
      out.append("\"/>");
    }
    int number = 1;
    for (PanelPoint p : places) {
      double x = p.xMm() * scale;
      double y = h - p.yMm() * scale;
      out.append("<circle cx=\"").append(mm(x)).append("\" cy=\"").append(mm(y));
      out.append("\" r=\"2.6\" fill=\"#fff\" stroke=\"#333\" stroke-width=\".3\"/><text x=\"");
      out.append(mm(x)).append("\" y=\"").append(mm(y + 1.05));
      out.append("\" text-anchor=\"middle\">").append(number++).append("</text>");
    }
    out.append("</svg>\n");
  }

  /** Short tables side by side, so that a page takes many places. */
  private void heightTables(ProbePlaces places) {
    out.append("<div class=\"cols\">\n");
    int rows = Math.max(5, (places.places().size() + 2) / 3);
    for (int from = 0; from < places.places().size(); from += rows) {
      out.append("<table><tr><th>place<th>x mm<th>y mm<th>z mm</tr>\n");
      for (int i = from; i < Math.min(from + rows, places.places().size()); i++) {
        PanelPoint p = places.places().get(i);
        out.append("<tr><td>").append(i + 1).append("<td>").append(mm(p.xMm())).append("<td>");
        out.append(mm(p.yMm())).append("<td class=\"w\"></tr>\n");
      }
      out.append("</table>\n");
    }
    out.append("</div>\n");
  }

  private void edgeTable(Layup layup, List<PanelPoint> places) {
    IntUnaryOperator half = i -> (places.size() * i + 1) / 2;
    for (int part = 0; part < 2; part++) {
      int from = half.applyAsInt(part);
      int to = part == 0 ? half.applyAsInt(1) : places.size();
      out.append("<table><tr><th class=\"l\">bottom of, mm");
      for (int i = from; i < to; i++) {
        out.append("<th>").append(i + 1).append("<br>").append(mm(places.get(i).xMm()));
        out.append("; ").append(mm(places.get(i).yMm()));
      }
      out.append("</tr>\n");
      for (Ply ply : layup.plies()) {
        out.append("<tr><td class=\"l\">").append(ply.number()).append(' ');
        out.append(text(ply.name()));
        out.append("<td class=\"w\">".repeat(to - from)).append("</tr>\n");
      }
      out.append("</table>\n");
    }
  }

  private String end() {
    return out.append("</body></html>\n").toString();
  }

  private static String text(String words) {
    return Markup.escape(Visible.line(words));
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
