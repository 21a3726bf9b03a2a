package plyscape.report;

import plyscape.layup.Ply;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.text.Durations;
import plyscape.text.Numbers;

/** Passes with their times, and a bar of the time by tool and ply. */
final class PassPart {

  private static final double BAR_WIDTH = 860;
  private static final int ROW = 46;

  private PassPart() {}

  static void write(Html page, PanelPlan plan) {
    page.raw("<section id=\"passes\">\n<h2>Passes and time</h2>\n");
    page.raw(
            "<p>"
                + Durations.text(plan.time().totalS())
                + " of machine time: "
                + Durations.text(plan.time().cutS())
                + " cutting, "
                + Durations.text(plan.time().rapidS())
                + " moving. No plan with these cutters and stepovers can take less than "
                + Durations.text(plan.time().lowerBoundS())
                + ". ")
        .raw(
            "With "
                + Durations.text(changesS(plan))
                + " for putting in "
                + cutters(plan)
                + " and "
                + Durations.text(spindleS(plan))
                + " for the spindle to come up, allow "
                + Durations.text(plan.time().totalS() + changesS(plan) + spindleS(plan))
                + ".</p>\n");
    page.raw(
        "<p>A cutter finishes one place down to its last depth before it goes on to the next, so it"
            + " comes back to each depth in several runs; the rows add them up, and the programs"
            + " and <code>plan.json</code> list them one by one.</p>\n");
    if (plan.landscape().faces().isPresent()) {
      page.raw(
          "<p>The last rows follow the sculpted faces, from the shallowest to the deepest; their"
              + " ply is the one of the deepest place.</p>\n");
    }
    if (!plan.programs().isEmpty()) {
      timeBar(page, plan);
    }
    page.table(
        "File",
        "Cutter",
        "Ply",
        "#From",
        "#To, mm",
        "#Cutting, mm",
        "#Rapids, mm",
        "#Runs",
        "#Entries",
        "#Time");
    for (ToolProgram program : plan.programs()) {
      for (PassSum pass : PassSum.of(program)) {
        page.raw("<tr>")
            .cell(program.file())
            .cell(program.tool().name())
            .raw("<td>")
            .ply(plan.depths().of(pass.plyNumber()).ply())
            .raw("</td>")
            .number(Numbers.fixed(pass.stepdownFromMm(), 3))
            .number(Numbers.fixed(pass.depthMm(), 3))
            .number(Numbers.fixed(pass.cutMm(), 0))
            .number(Numbers.fixed(pass.rapidMm(), 0))
            .number(Integer.toString(pass.runs()))
            .number(Integer.toString(pass.plunges()))
            .number(Durations.text(pass.timeS()))
            .raw("</tr>\n");
      }
    }
    page.endTable().raw("</section>\n");
    PathPart.write(page, plan);
  }

  /** Every file begins with a cutter put in. */
  private static double changesS(PanelPlan plan) {
    return plan.programs().size() * plan.job().machine().toolChangeS();
  }

  private static double spindleS(PanelPlan plan) {
    return plan.programs().size() * plan.job().machine().spinUpS();
  }

  private static String cutters(PanelPlan plan) {
    return plan.programs().size() == 1 ? "the cutter" : plan.programs().size() + " cutters";
  }

  /** One bar a tool, all to one scale, its pieces by pass in ply colours with the ply's number. */
  private static void timeBar(Html page, PanelPlan plan) {
    double longest = 1e-9;
    for (ToolProgram program : plan.programs()) {
      longest = Math.max(longest, seconds(program));
    }
    int height = plan.programs().size() * ROW + 4;
    page.raw(
        "<svg class=\"timebar\" viewBox=\"0 0 "
            + (int) (BAR_WIDTH + 10)
            + " "
            + height
            + "\" role=\"img\" aria-label=\"Time by cutter and ply\">\n");
    int y = 0;
    for (ToolProgram program : plan.programs()) {
      page.raw("<text x=\"0\" y=\"" + (y + 13) + "\">")
          .text(program.tool().name() + ": " + Durations.text(seconds(program)))
          .raw("</text>\n");
      double x = 0;
      for (PassSum pass : PassSum.of(program)) {
        double width = pass.timeS() / longest * BAR_WIDTH;
        Ply ply = plan.depths().of(pass.plyNumber()).ply();
        page.raw("<g><title>")
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
            .raw("</title>")
            .raw(
                "<rect x=\""
                    + Numbers.fixed(x, 2)
                    + "\" y=\""
                    + (y + 18)
                    + "\" width=\""
                    + Numbers.fixed(width, 2)
                    + "\" height=\"20\" fill=\""
                    + ply.colour()
                    + "\" stroke=\"#0008\" stroke-width=\"0.6\"/>");
        if (width > 14) {
          page.raw(
              "<text class=\"on\" x=\""
                  + Numbers.fixed(x + width / 2, 2)
                  + "\" y=\""
                  + (y + 32)
                  + "\" text-anchor=\"middle\" style=\"fill:"
                  + Html.inkOn(ply.rgb())
                  + "\">"
                  + ply.number()
                  + "</text>");
        }
        page.raw("</g>\n");
        x += width;
      }
      y += ROW;
    }
    page.raw("</svg>\n");
  }

  private static double seconds(ToolProgram program) {
    return program.passes().stream().mapToDouble(ToolProgram.PassSummary::timeS).sum();
  }
}
