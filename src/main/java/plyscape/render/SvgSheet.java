package plyscape.render;

import org.locationtech.jts.geom.MultiPolygon;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.render.layer.SvgLayers;
import plyscape.render.layer.SvgPath;
import plyscape.text.Markup;
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
    return SvgLayers.head(size(plan))
        + title(plan)
        + panel(plan)
        + registerMarks(panel)
        + scaleBar(panel.widthMm(), MARGIN + panel.heightMm() + 12)
        + list(plan, MARGIN + panel.widthMm() + MARGIN, MARGIN)
        + "</svg>\n";
  }

  /** The sheet: the panel with its margin, room for the scale bar below and the list beside. */
  private static Job.PanelSpec size(Landscape plan) {
    Job.PanelSpec panel = plan.job().panel();
    double listMm = 2 * MARGIN + 20 + plan.depths().plies() * 9;
    return new Job.PanelSpec(
        panel.widthMm() + 2 * MARGIN + LIST,
        Math.max(panel.heightMm() + 2 * MARGIN + 10, listMm),
        0);
  }

  private static String title(Landscape plan) {
    Job.PanelSpec panel = plan.job().panel();
    String words =
        Template.fill(
            "All layers of the panel, %.3t x %.3t mm, at true size."
                + " Check the scale bar after printing.",
            panel.widthMm(), panel.heightMm());
    return Template.fill(
        "<title>%s</title>\n<desc>%s</desc>\n",
        Markup.escape(plan.job().title()), Markup.escape(words));
  }

  /** The panel in the top ply's colour, and on it a group a ply that shows. */
  private static String panel(Landscape plan) {
    Job.PanelSpec panel = plan.job().panel();
    StringBuilder out = new StringBuilder();
    out.append(
        Template.fill(
            "<g id=\"panel\" transform=\"translate(%.3t %.3t)\">\n"
                + "<rect width=\"%.3t\" height=\"%.3t\" fill=\"%s\""
                + " stroke=\"#000000\" stroke-width=\"0.1\"/>\n",
            MARGIN, MARGIN, panel.widthMm(), panel.heightMm(), plan.depths().top().ply().colour()));
    plan.tiling()
        .exposed()
        .forEach((ply, area) -> out.append(layer(plan.depths().of(ply), area, panel)));
    return out.append("</g>\n").toString();
  }

  private static String layer(PlyDepth depth, MultiPolygon area, Job.PanelSpec panel) {
    int number = depth.ply().number();
    return Template.fill(
        "<g id=\"ply-%d\" data-ply=\"%d\" data-name=\"%s\" data-target-mm=\"%.6t\">"
            + "<path fill-rule=\"evenodd\" fill=\"%s\" d=\"%s\"/></g>\n",
        number,
        number,
        Markup.escape(depth.ply().name()),
        depth.targetMm(),
        depth.ply().colour(),
        SvgPath.data(area, panel.heightMm()));
  }

  private static String registerMarks(Job.PanelSpec panel) {
    StringBuilder out =
        new StringBuilder(
            "<g id=\"marks\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.15\">\n");
    for (int corner = 0; corner < 4; corner++) {
      int row = corner / 2;
      out.append(cross(MARGIN + (corner % 2) * panel.widthMm(), MARGIN + row * panel.heightMm()));
    }
    return out.append("</g>\n").toString();
  }

  /** A cross of 10 mm and a circle of 6 mm about a corner of the panel. */
  private static String cross(double x, double y) {
    return Template.fill(
        "<path class=\"register\" d=\"M%.3t %.3tH%.3tM%.3t %.3tV%.3t\"/>"
            + "<circle cx=\"%.3t\" cy=\"%.3t\" r=\"3\"/>\n",
        x - 5, y, x + 5, x, y - 5, y + 5, x, y);
  }

  private static String scaleBar(double widthMm, double y) {
    double length = ScaleBar.lengthMm(widthMm);
    return Template.fill(
        "<g id=\"scale-bar\">"
            + "<rect x=\"%.3t\" y=\"%.3t\" width=\"%.3t\" height=\"2\" fill=\"#000000\"/>"
            + "<text x=\"%.3t\" y=\"%.3t\" font-family=\"sans-serif\" font-size=\"3.5\">"
            + "%.3t mm</text></g>\n",
        MARGIN, y, length, MARGIN + length + 2, y + 2, length);
  }

  private static String list(Landscape plan, double x, double top) {
    StringBuilder out = new StringBuilder();
    out.append(
        Template.fill(
            """
            <g id="list" font-family="sans-serif" font-size="3.5">
            <text x="%.3t" y="%.3t" font-size="4.5">%s</text>
            """,
            x, top + 3, Markup.escape(plan.job().title())));
    double y = top + 10;
    for (PlyDepth depth : plan.depths()) {
      if (plan.tiling().exposed().containsKey(depth.ply().number())) {
        String cut =
            plan.cutMm(depth.ply().number()).cutText() + (depth.targetMm() > 0 ? " mm" : "");
        out.append(entry(depth, cut, x, y));
        y += 9;
      }
    }
    return out.append("</g>\n").toString();
  }

  private static String entry(PlyDepth depth, String cut, double x, double y) {
    return Template.fill(
        "<rect x=\"%.3t\" y=\"%.3t\" width=\"8\" height=\"6\" fill=\"%s\""
            + " stroke=\"#000000\" stroke-width=\"0.1\"/>"
            + "<text x=\"%.3t\" y=\"%.3t\">%d %s, %s</text>\n",
        x,
        y,
        depth.ply().colour(),
        x + 10,
        y + 4.3,
        depth.ply().number(),
        Markup.escape(depth.ply().name()),
        cut);
  }
}
