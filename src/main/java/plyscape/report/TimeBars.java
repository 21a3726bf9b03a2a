package plyscape.report;

import plyscape.layup.Ply;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.text.Durations;
import plyscape.text.Numbers;

/**
 * One bar a cutter, all to one scale, its pieces by pass in ply colours with the ply's number. Text
 * and boxes, no picture: they stay readable on a phone.
 */
final class TimeBars {

  /** Narrower pieces have no room for a number on any screen. */
  private static final double LEAST_NUMBERED_PERCENT = 2.2;

  private TimeBars() {}

  static void write(Html page, PanelPlan plan) {
    double longest = 1e-9;
    for (ToolProgram program : plan.programs()) {
      longest = Math.max(longest, program.timeS());
    }
    page.raw("<div id=\"time-bars\">\n");
    for (ToolProgram program : plan.programs()) {
      page.raw("<p>")
          .text(program.tool().name() + ": " + Durations.text(program.timeS()))
          .raw("</p><div class=\"bar\">");
      for (PassSum pass : PassSum.of(program)) {
        piece(page, plan.depths().of(pass.plyNumber()).ply(), pass, 100 * pass.timeS() / longest);
      }
      page.raw("</div>\n");
    }
    page.raw("</div>\n");
  }

  private static void piece(Html page, Ply ply, PassSum pass, double percent) {
    page.raw("<span style=\"width:" + Numbers.fixed(percent, 2) + "%;background:" + ply.colour())
        .raw(";color:" + Html.inkOn(ply.rgb()) + "\" title=\"")
        .text(
            ply.number()
                + " "
                + ply.name()
                + ", "
                + Numbers.fixed(pass.stepdownFromMm(), 2)
                + " to "
                + Numbers.fixed(pass.depthMm(), 2)
                + " mm: "
                + Durations.text(pass.timeS()))
        .raw("\">")
        .raw(percent > LEAST_NUMBERED_PERCENT ? Integer.toString(ply.number()) : "&#160;")
        .raw("</span>");
  }
}
