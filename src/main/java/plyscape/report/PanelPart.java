package plyscape.report;

import java.util.Base64;
import java.util.Locale;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.render.PlyLabels;
import plyscape.render.RiskStep;
import plyscape.text.Numbers;
import plyscape.text.Template;
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
                + "</section>\n");
    SolidPart.write(page, plan);
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
          Template.fill(
              "<text x=\"%.2t\" y=\"%.2t\" text-anchor=\"middle\" dominant-baseline=\"central\""
                  + " font-size=\"%.2t\" fill=\"%s\">%s</text>\n",
              label.x(),
              panel.heightMm() - label.y(),
              Math.min(label.radiusMm(), unit * 0.018),
              Html.inkOn(ply.rgb()),
              ply.number()));
    }
    page.raw("</g>\n");
    WeakMarks.marks(page, plan);
    page.raw("<line class=\"cut back\"/><line class=\"cut front\"/>\n");
    end(page, "a");
    end(page, "b");
    page.raw("</svg></figure>\n");
  }

  /**
   * An end of the section: what a finger takes hold of, what shows, its letter. Sized by script.
   */
  private static void end(Html page, String id) {
    String name = id.toUpperCase(Locale.ROOT);
    page.raw("<circle class=\"handle\" id=\"handle-" + id + "\" tabindex=\"0\" role=\"slider\"")
        .raw(" aria-label=\"End " + name + " of the section\" aria-valuenow=\"0\"/>")
        .raw("<circle class=\"dot\" id=\"dot-" + id + "\"/>")
        .raw("<text class=\"mark\" id=\"mark-" + id + "\" text-anchor=\"middle\"")
        .raw(" dominant-baseline=\"central\">" + name + "</text>\n");
  }

  private static void side(Html page, Landscape plan) {
    page.raw("<div class=\"side\"><div id=\"readout\" aria-live=\"polite\"></div>\n")
        .raw("<div>\n")
        .raw("<fieldset id=\"show\"><legend>Show</legend>")
        .raw(
            "<label><input type=\"radio\" name=\"mode\" value=\"colours\" checked> ply"
                + " colours</label>")
        .raw(
            "<label><input type=\"radio\" name=\"mode\" value=\"risk\"> risk of a wrong"
                + " colour</label>")
        .raw("<label><input type=\"radio\" name=\"mode\" value=\"zones\"> zones</label>")
        .raw("<label><input type=\"checkbox\" id=\"numbers\"> ply numbers</label>")
        .raw("<label><input type=\"checkbox\" id=\"patterns\"> a pattern for each ply</label>");
    WeakMarks.toggle(page, plan);
    page.raw("</fieldset>\n");
    keys(page, plan);
    page.raw("<fieldset id=\"layers\"><legend>Layers</legend>\n");
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
    page.raw("<button id=\"all-on\">All</button><button id=\"all-off\">None</button></fieldset>\n")
        .raw("</div></div>\n");
  }

  /** What the colours mean when they aren't those of the plies; also on paper. */
  private static void keys(Html page, Landscape plan) {
    page.raw("<fieldset id=\"risk-key\" hidden><legend>Risk of a wrong colour</legend>");
    for (RiskStep step : RiskStep.values()) {
      page.raw("<div><span class=\"swatch\" style=\"background:" + step.colour())
          .raw("\">&#160;</span>" + step.words() + "</div>");
    }
    page.raw("</fieldset>\n<fieldset id=\"zone-key\" hidden><legend>Zones</legend>");
    for (Zone zone : plan.zones()) {
      page.raw("<div><span class=\"swatch\">&#160;</span>").text(zone.spec().name()).raw("</div>");
    }
    page.raw("</fieldset>\n");
  }
}
