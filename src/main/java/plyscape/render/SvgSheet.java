package plyscape.render;

import java.util.Map;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Markup;
import plyscape.text.Numbers;
import plyscape.text.Template;

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
    out.append(
        Template.fill(
            "<rect width=\"%.3t\" height=\"%.3t\" fill=\"%s\" stroke=\"#000000\""
                + " stroke-width=\"0.1\"/>\n",
            panel.widthMm(), panel.heightMm(), plan.depths().top().ply().colour()));
    for (Map.Entry<Integer, MultiPolygon> layer : plan.tiling().exposed().entrySet()) {
      PlyDepth depth = FinishedFace.depth(plan, layer.getKey());
      out.append(
          Template.fill(
              "<g id=\"ply-%s\" data-ply=\"%s\" data-name=\"%s\" data-target-mm=\"%.6t\"><path"
                  + " fill-rule=\"evenodd\" fill=\"%s\" d=\"%s\"/></g>\n",
              layer.getKey(),
              layer.getKey(),
              Markup.escape(depth.ply().name()),
              depth.targetMm(),
              depth.ply().colour(),
              SvgPath.data(layer.getValue(), panel.heightMm())));
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
    out.append(
        Template.fill(
            "<path class=\"register\" d=\"M%.3t %.3tH%.3tM%.3t %.3tV%.3t\"/><circle cx=\"%.3t\""
                + " cy=\"%.3t\" r=\"3\"/>\n",
            x - 5, y, x + 5, x, y - 5, y + 5, x, y));
  }

  private static void scaleBar(StringBuilder out, double widthMm, double y) {
    double length = ScaleBar.lengthMm(widthMm);
    out.append(
        Template.fill(
            "<g id=\"scale-bar\"><rect x=\"%.3t\" y=\"%.3t\" width=\"%.3t\" height=\"2\""
                + " fill=\"#000000\"/><text x=\"%.3t\" y=\"%.3t\" font-family=\"sans-serif\""
                + " font-size=\"3.5\">%.3t mm</text></g>\n",
            MARGIN, y, length, MARGIN + length + 2, y + 2, length));
  }

  private static void list(StringBuilder out, Landscape plan, double x, double top) {
    out.append(
        Template.fill(
            "<g id=\"list\" font-family=\"sans-serif\" font-size=\"3.5\">\n"
                + "<text x=\"%.3t\" y=\"%.3t\" font-size=\"4.5\">%s</text>\n",
            x, top + 3, Markup.escape(plan.job().title())));
    double y = top + 10;
    for (PlyDepth depth : plan.depths()) {
      if (plan.tiling().exposed().containsKey(depth.ply().number())) {
        String cut =
            FinishedFace.cutText(plan, depth.ply().number()) + (depth.targetMm() > 0 ? " mm" : "");
        out.append(
            Template.fill(
                "<rect x=\"%.3t\" y=\"%.3t\" width=\"8\" height=\"6\" fill=\"%s\""
                    + " stroke=\"#000000\" stroke-width=\"0.1\"/><text x=\"%.3t\" y=\"%.3t\">%s %s,"
                    + " %s</text>\n",
                x,
                y,
                depth.ply().colour(),
                x + 10,
                y + 4.3,
                depth.ply().number(),
                Markup.escape(depth.ply().name()),
                cut));
        y += 9;
      }
    }
    out.append("</g>\n");
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
