package plyscape.report;

import java.util.Base64;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.render.PlyLabels;
import plyscape.render.RiskStep;
import plyscape.text.Numbers;
import plyscape.zones.Zone;

/** The panel to point at with its layers, the section, the solid: what the page's scripts fill. */
final class PanelPart {

  /** Pixels along the longer side of the picture. */
  static final int LONGEST_PX = 960;

  /** A number needs this much room around it, mm on a panel 240 mm wide. */
  private static final double LABEL_SHARE = 0.008;

  private PanelPart() {}

  static void write(Html page, Landscape plan, byte[] picture) {
    page.raw("<section id=\"panel\">\n<h2>The panel from above</h2>\n")
        .raw(
            "<noscript><p>The picture can be asked and turned when scripts are allowed; the tables"
                + " below need none.</p></noscript>\n")
        .raw(
            "<p class=\"hint\">Point at or tap a place to read it. Drag A and B (or use the arrow"
                + " keys) to move the section.</p>\n")
        .raw("<div class=\"bench\">\n");
    stage(page, plan, picture);
    side(page, plan);
    page.raw("</div>\n");
    if (reachesEdge(plan)) {
      page.raw(
              "<p class=\"hint\">Where the carving runs to the panel's edge, as at a seam to the"
                  + " next panel, that edge is a wall for")
          .raw(" the cutter: inner corners there keep its radius.</p>\n");
    }
    page.raw("</section>\n<section id=\"section\">\n<h2>Section from A to B</h2>\n")
        .raw("<canvas class=\"wide\" id=\"section-view\" role=\"img\"></canvas>\n")
        .raw(
            "<p class=\"hint\">Bold line: the finished face, cut and sanded. Pale: wood that goes."
                + " Dark: glue lines.</p>\n"
                + "</section>\n")
        .raw("<section id=\"view3d\">\n<h2>The panel as a solid</h2>\n")
        .raw(
            "<canvas class=\"wide\" id=\"solid\" tabindex=\"0\" role=\"img\" aria-label=\"The"
                + " finished panel, turning\"></canvas>\n")
        .raw(
            "<p class=\"controls\"><button id=\"turn-left\">Turn left</button><button"
                + " id=\"turn-right\">Turn right</button>")
        .raw("<button id=\"nearer\">Nearer</button><button id=\"farther\">Farther</button>")
        .raw(
            "<label>Heights <input type=\"range\" id=\"stretch\" min=\"1\" max=\"6\" step=\"0.25\""
                + " value=\"2\"></label></p>\n")
        .raw(
            "<p class=\"hint\" id=\"solid-note\">Drag to turn. Walls show the plies that they cut"
                + " through.</p>\n"
                + "</section>\n");
  }

  private static boolean reachesEdge(Landscape plan) {
    Box carved = plan.tiling().carved();
    Job.PanelSpec panel = plan.job().panel();
    return carved.minX() <= 0
        || carved.minY() <= 0
        || carved.maxX() >= panel.widthMm()
        || carved.maxY() >= panel.heightMm();
  }

  private static void stage(Html page, Landscape plan, byte[] picture) {
    Job.PanelSpec panel = plan.job().panel();
    String w = Numbers.trimmed(panel.widthMm(), 3);
    String h = Numbers.trimmed(panel.heightMm(), 3);
    double unit = Math.max(panel.widthMm(), panel.heightMm());
    String thin = Numbers.trimmed(unit * 0.003, 3);
    page.raw(
            "<figure class=\"stage\" id=\"stage\"><img alt=\"The finished panel from above, in ply"
                + " colours\" src=\"data:image/png;base64,")
        .raw(Base64.getEncoder().encodeToString(picture))
        .raw(
            "\"><canvas id=\"overlay\"></canvas>\n<svg id=\"lines\" viewBox=\"0 0 "
                + w
                + " "
                + h
                + "\">\n<g id=\"labels\">\n");
    for (PlyLabels.Label label : PlyLabels.of(plan, unit * LABEL_SHARE)) {
      Ply ply = plan.depths().of(label.plyNumber()).ply();
      page.raw(
          "<text x=\""
              + Numbers.trimmed(label.x(), 2)
              + "\" y=\""
              + Numbers.trimmed(panel.heightMm() - label.y(), 2)
              + "\" text-anchor=\"middle\" dominant-baseline=\"central\" font-size=\""
              + Numbers.trimmed(Math.min(label.radiusMm(), unit * 0.018), 2)
              + "\" fill=\""
              + Html.inkOn(ply.rgb())
              + "\">"
              + ply.number()
              + "</text>\n");
    }
    page.raw(
            "</g>\n<line class=\"cut back\" stroke-width=\""
                + Numbers.trimmed(unit * 0.005, 3)
                + "\"/><line class=\"cut\" stroke-width=\""
                + thin
                + "\"/>\n")
        .raw(handle("a", unit, thin))
        .raw(handle("b", unit, thin))
        .raw(mark("a", unit))
        .raw(mark("b", unit))
        .raw("</svg></figure>\n");
  }

  private static String handle(String id, double unit, String thin) {
    return "<circle class=\"handle\" id=\"handle-"
        + id
        + "\" r=\""
        + Numbers.trimmed(unit * 0.014, 3)
        + "\" stroke-width=\""
        + thin
        + "\" tabindex=\"0\" role=\"slider\" aria-label=\"End "
        + id.toUpperCase(java.util.Locale.ROOT)
        + " of the section\" aria-valuenow=\"0\"/>\n";
  }

  private static String mark(String id, double unit) {
    return "<text class=\"mark\" id=\"mark-"
        + id
        + "\" text-anchor=\"middle\" dominant-baseline=\"central\" font-size=\""
        + Numbers.trimmed(unit * 0.016, 3)
        + "\">"
        + id.toUpperCase(java.util.Locale.ROOT)
        + "</text>\n";
  }

  private static void side(Html page, Landscape plan) {
    page.raw(
            "<div class=\"side\"><div id=\"readout\" aria-live=\"polite\"></div>\n"
                + "<div class=\"controls\">\n")
        .raw("<fieldset><legend>Show</legend>")
        .raw(
            "<label><input type=\"radio\" name=\"mode\" value=\"colours\" checked> ply"
                + " colours</label>")
        .raw(
            "<label><input type=\"radio\" name=\"mode\" value=\"risk\"> risk of a wrong"
                + " colour</label>")
        .raw("<label><input type=\"radio\" name=\"mode\" value=\"zones\"> zones</label>")
        .raw("<label><input type=\"checkbox\" id=\"numbers\"> ply numbers</label>")
        .raw(
            "<label><input type=\"checkbox\" id=\"patterns\"> a pattern for each"
                + " ply</label></fieldset>\n");
    page.raw("<fieldset id=\"risk-key\" hidden><legend>Risk</legend>");
    for (RiskStep step : RiskStep.values()) {
      page.raw("<span class=\"swatch\" style=\"background:" + step.colour() + "\">&#160;</span>")
          .raw(step.words() + "<br>");
    }
    page.raw("</fieldset>\n<fieldset id=\"zone-key\" hidden><legend>Zones</legend>");
    for (Zone zone : plan.zones()) {
      page.raw("<span class=\"swatch\">&#160;</span>").text(zone.spec().name()).raw("<br>");
    }
    page.raw("</fieldset>\n<fieldset><legend>Layers</legend>\n");
    for (PlyDepth depth : plan.depths()) {
      if (plan.tiling().exposed().containsKey(depth.ply().number())) {
        page.raw(
                "<label><input type=\"checkbox\" class=\"layer\" value=\""
                    + depth.ply().number()
                    + "\" checked> ")
            .ply(depth.ply())
            .raw("</label>\n");
      }
    }
    page.raw(
        "<button id=\"all-on\">All</button><button id=\"all-off\">None</button></fieldset>\n"
            + "</div></div>\n");
  }
}
