package plyscape.report;

import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.text.Durations;
import plyscape.text.Numbers;
import plyscape.text.Template;

/** Passes with their times, and a bar of the time by tool and ply. */
final class PassPart {

  private PassPart() {}

  static void write(Html page, PanelPlan plan) {
    page.raw("<section id=\"passes\">\n<h2>Passes and time</h2>\n");
    times(page, plan);
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
      TimeBars.write(page, plan);
    }
    table(page, plan);
    page.raw("</section>\n");
    PathPart.write(page, plan);
  }

  private static void times(Html page, PanelPlan plan) {
    page.raw(
            Template.fill(
                "<p>%s of machine time: %s cutting, %s moving. No plan with these cutters and"
                    + " stepovers can take less than %s. ",
                Durations.text(plan.time().totalS()),
                Durations.text(plan.time().cutS()),
                Durations.text(plan.time().rapidS()),
                Durations.text(plan.time().lowerBoundS())))
        .raw(
            Template.fill(
                "With %s for putting in %s and %s for the spindle to come up, allow %s.</p>\n",
                Durations.text(changesS(plan)),
                cutters(plan),
                Durations.text(spindleS(plan)),
                Durations.text(plan.time().totalS() + changesS(plan) + spindleS(plan))));
  }

  private static void table(Html page, PanelPlan plan) {
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
    page.endTable();
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
}
