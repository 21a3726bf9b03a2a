package plyscape.render;

import java.util.Map;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Markup;
import plyscape.text.Numbers;

/**
 * All layers on one SVG sheet at true size: the panel with a margin around it, crosses at its
 * corners to register prints and templates by, a scale bar, a list of plies. One group a ply, with
 * the same attributes as the layer files. mm, Y down.
 */
public final class SvgSheet {

  /** Room around the panel, mm. */
  private static final double MARGIN = 20;

  /** Room for the list of plies on the right, mm. */
  private static final double LIST = 80;

  private SvgSheet() {}

  /** The sheet's text. */
  public static String write(Landscape plan) {
    Job.PanelSpec panel = plan.job().panel();
    double width = panel.widthMm() + 2 * MARGIN + LIST;
    double height =
        Math.max(panel.heightMm() + 2 * MARGIN + 10, 2 * MARGIN + 20 + plan.depths().plies() * 9);
    StringBuilder out = new StringBuilder(SvgLayers.head(new Job.PanelSpec(width, height, 0)));
    out.append("<title>")
        .append(Markup.escape(plan.job().title()))
        .append("</title>\n<desc>")
        .append(
            Markup.escape(
                "All layers of the panel, "
                    + mm(panel.widthMm())
                    + " x "
                    + mm(panel.heightMm())
                    + " mm, at true size. Check the scale bar after printing."))
        .append("</desc>\n<g id=\"panel\" transform=\"translate(")
        .append(mm(MARGIN))
        .append(' ')
        .append(mm(MARGIN))
        .append(")\">\n");
    out.append("<rect width=\"")
        .append(mm(panel.widthMm()))
        .append("\" height=\"")
        .append(mm(panel.heightMm()))
        .append("\" fill=\"")
        .append(plan.depths().top().ply().colour())
        .append("\" stroke=\"#000000\" stroke-width=\"0.1\"/>\n");
    for (Map.Entry<Integer, MultiPolygon> layer : plan.tiling().exposed().entrySet()) {
      PlyDepth depth = FinishedFace.depth(plan, layer.getKey());
      out.append("<g id=\"ply-")
          .append(layer.getKey())
          .append("\" data-ply=\"")
          .append(layer.getKey())
          .append("\" data-name=\"")
          .append(Markup.escape(depth.ply().name()))
          .append("\" data-target-mm=\"")
          .append(Numbers.trimmed(depth.targetMm(), 6))
          .append("\"><path fill-rule=\"evenodd\" fill=\"")
          .append(depth.ply().colour())
          .append("\" d=\"")
          .append(SvgPath.data(layer.getValue(), panel.heightMm()))
          .append("\"/></g>\n");
    }
    out.append("</g>\n<g id=\"marks\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.15\">\n");
    for (int corner = 0; corner < 4; corner++) {
      int row = corner / 2;
      cross(out, MARGIN + (corner % 2) * panel.widthMm(), MARGIN + row * panel.heightMm());
    }
    out.append("</g>\n");
    scaleBar(out, panel.widthMm(), MARGIN + panel.heightMm() + 12);
    list(out, plan, MARGIN + panel.widthMm() + MARGIN, MARGIN);
    return out.append("</svg>\n").toString();
  }

  /** A cross of 10 mm and a circle of 6 mm about a corner of the panel. */
  private static void cross(StringBuilder out, double x, double y) {
    out.append("<path class=\"register\" d=\"M")
        .append(mm(x - 5))
        .append(' ')
        .append(mm(y))
        .append('H')
        .append(mm(x + 5))
        .append('M')
        .append(mm(x))
        .append(' ')
        .append(mm(y - 5))
        .append('V')
        .append(mm(y + 5))
        .append("\"/><circle cx=\"")
        .append(mm(x))
        .append("\" cy=\"")
        .append(mm(y))
        .append("\" r=\"3\"/>\n");
  }

  private static void scaleBar(StringBuilder out, double widthMm, double y) {
    double length = ScaleBar.lengthMm(widthMm);
    out.append("<g id=\"scale-bar\"><rect x=\"")
        .append(mm(MARGIN))
        .append("\" y=\"")
        .append(mm(y))
        .append("\" width=\"")
        .append(mm(length))
        .append("\" height=\"2\" fill=\"#000000\"/><text x=\"")
        .append(mm(MARGIN + length + 2))
        .append("\" y=\"")
        .append(mm(y + 2))
        .append("\" font-family=\"sans-serif\" font-size=\"3.5\">")
        .append(mm(length))
        .append(" mm</text></g>\n");
  }

  private static void list(StringBuilder out, Landscape plan, double x, double top) {
    out.append("<g id=\"list\" font-family=\"sans-serif\" font-size=\"3.5\">\n<text x=\"")
        .append(mm(x))
        .append("\" y=\"")
        .append(mm(top + 3))
        .append("\" font-size=\"4.5\">")
        .append(Markup.escape(plan.job().title()))
        .append("</text>\n");
    double y = top + 10;
    for (PlyDepth depth : plan.depths()) {
      if (plan.tiling().exposed().containsKey(depth.ply().number())) {
        String cut =
            FinishedFace.cutText(plan, depth.ply().number()) + (depth.targetMm() > 0 ? " mm" : "");
        out.append("<rect x=\"")
            .append(mm(x))
            .append("\" y=\"")
            .append(mm(y))
            .append("\" width=\"8\" height=\"6\" fill=\"")
            .append(depth.ply().colour())
            .append("\" stroke=\"#000000\" stroke-width=\"0.1\"/><text x=\"")
            .append(mm(x + 10))
            .append("\" y=\"")
            .append(mm(y + 4.3))
            .append("\">")
            .append(depth.ply().number())
            .append(' ')
            .append(Markup.escape(depth.ply().name()))
            .append(", ")
            .append(cut)
            .append("</text>\n");
        y += 9;
      }
    }
    out.append("</g>\n");
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
