package plyscape.report;

import plyscape.fault.Warning;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.plan.PanelPlan;
import plyscape.simulate.Verification;
import plyscape.terrain.Terrain;
import plyscape.text.Durations;
import plyscape.text.Numbers;
import plyscape.text.Template;

/** The top of the page: warnings, then what a person wants to know in ten seconds. */
final class SummaryPart {

  private SummaryPart() {}

  static void write(Html page, PanelPlan plan) {
    warnings(page, plan);
    page.raw("<dl class=\"cards\" id=\"summary\">\n");
    panel(page, plan.landscape());
    scale(page, plan.landscape());
    time(page, plan);
    proof(page, plan.verification());
    card(
        page,
        "Wrong colour",
        Numbers.fixed(wrongColourMm2(plan.landscape()), 2) + " mm2",
        "expected, of "
            + Numbers.fixed(plan.tiling().carved().area(), 0)
            + " mm2 carved, from the tolerances");
    page.raw("</dl>\n");
  }

  private static void panel(Html page, Landscape plan) {
    card(
        page,
        "Panel",
        Template.fill(
            "%.1t x %.1t mm", plan.job().panel().widthMm(), plan.job().panel().heightMm()),
        Template.fill(
            "%.2f mm thick, %s of %s plies show",
            plan.thicknessMm(), plan.tiling().exposed().size(), plan.depths().plies()));
  }

  private static void scale(Html page, Landscape plan) {
    Terrain ground = plan.terrain();
    card(
        page,
        "Scale",
        "1 : " + Words.grouped(Math.round(ground.frame().metresPerMm() * 1000)),
        Template.fill(
            "ground %.0f to %.0f m, heights %s",
            ground.zminM(), ground.zmaxM(), heights(exaggeration(plan))));
  }

  private static void time(Html page, PanelPlan plan) {
    int tools = plan.programs().size();
    card(
        page,
        "Machine time",
        Durations.text(plan.time().totalS()),
        Template.fill(
            "with %s%s, without changing them; the limit is %s",
            tools, tools == 1 ? " cutter" : " cutters", Durations.text(plan.time().lowerBoundS())));
  }

  private static void proof(Html page, Verification proof) {
    card(
        page,
        "Proof by simulation",
        Numbers.fixed(100 * proof.matchedShare(), 2) + " % as planned",
        (proof.safe() ? "no gouge, no collision" : "NOT SAFE: see Checks")
            + ", cells of "
            + Numbers.trimmed(proof.cellMm(), 3)
            + " mm");
  }

  /** Expected area with the wrong colour: every ply's area times its risk. */
  static double wrongColourMm2(Landscape plan) {
    double sum = 0;
    for (PlyDepth depth : plan.depths()) {
      if (plan.tiling().exposed().containsKey(depth.ply().number())) {
        sum += depth.risk() * plan.tiling().exposed().get(depth.ply().number()).getArea();
      }
    }
    return sum;
  }

  /**
   * How many times steeper than the ground the panel is: mid-ply span of the terrain's plies
   * against its relief at scale.
   */
  private static double exaggeration(Landscape plan) {
    PlyDepth first = plan.depths().of(plan.bands().plyNumbers().get(0));
    PlyDepth last =
        plan.depths().of(plan.bands().plyNumbers().get(plan.bands().plyNumbers().size() - 1));
    double relief =
        (plan.terrain().zmaxM() - plan.terrain().zminM()) / plan.terrain().frame().metresPerMm();
    return relief > 0 ? (last.midMm() - first.midMm()) / relief : 0;
  }

  private static String heights(double times) {
    return times >= 1
        ? Numbers.fixed(times, 1) + " times steeper than true"
        : times > 0 ? Numbers.fixed(1 / times, 1) + " times flatter than true" : "all alike";
  }

  private static void warnings(Html page, PanelPlan plan) {
    if (plan.warnings().isEmpty()) {
      page.raw("<p class=\"quiet\" id=\"warnings\">No warnings.</p>\n");
      return;
    }
    page.raw("<section class=\"warnings\" id=\"warnings\"><strong>")
        .raw(plan.warnings().size() == 1 ? "1 warning" : plan.warnings().size() + " warnings")
        .raw("</strong>\n<ul>\n");
    for (Warning warning : plan.warnings()) {
      page.raw("<li><code>").text(warning.code()).raw("</code> ").text(warning.message());
      if (!warning.where().isEmpty()) {
        page.raw(" <span class=\"sub\">(").text(warning.where()).raw(")</span>");
      }
      page.raw("</li>\n");
    }
    page.raw("</ul></section>\n");
  }

  private static void card(Html page, String name, String value, String small) {
    page.raw("<div><dt>")
        .text(name)
        .raw("</dt><dd>")
        .text(value)
        .raw("<small>")
        .text(small)
        .raw("</small></dd></div>\n");
  }
}
