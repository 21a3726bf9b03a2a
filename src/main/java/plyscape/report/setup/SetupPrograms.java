package plyscape.report.setup;

import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Collectors;
import plyscape.gcode.PassComment;
import plyscape.gcode.ProgramFrame;
import plyscape.layup.Ply;
import plyscape.machine.Tool;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.report.Html;
import plyscape.text.Durations;
import plyscape.text.Numbers;

/** The rows of the set-up sheet: a program each, in cutting order, with a box to tick. */
final class SetupPrograms {

  private SetupPrograms() {}

  static void write(Html page, PanelPlan plan) {
    page.raw(
        """
        <h2>Programs, in this order</h2>
        <div class="wide"><table id="programs">
        <thead><tr>\
        """);
    for (String head :
        List.of(
            "Done",
            "File and what it does",
            "Cutter",
            "#Stick out",
            "#rpm",
            "#Feed",
            "#Plunge",
            "#Step down",
            "#Deepest Z",
            "#Time")) {
      boolean right = head.startsWith("#");
      page.raw(right ? "<th class=\"num\">" : "<th>")
          .text(right ? head.substring(1) : head)
          .raw("</th>");
    }
    page.raw("</tr></thead>\n<tbody>\n");
    plan.programs().forEach(program -> row(page, plan, program));
    page.raw("</tbody></table></div>\n<p>Feed and plunge in mm/min, lengths in mm. ")
        .raw("Stick out: from the holder to the tip, at least.</p>\n");
  }

  private static void row(Html page, PanelPlan plan, ToolProgram program) {
    Tool tool = program.tool();
    double deepest = program.low().maxDepth();
    ProgramFrame frame = Clearways.of(plan).frame();
    page.raw("<tr><td><span class=\"box\"></span></td>\n<td><span class=\"file\">")
        .text(program.file())
        .raw("</span><small>")
        .text(does(plan, program))
        .raw("</small></td>\n<td>")
        .text(tool.name())
        .raw("<small>")
        .text(form(tool))
        .raw("</small></td>\n")
        .number(stickOut(tool, deepest + plan.landscape().shape().risesMm()))
        .number(Numbers.fixed(tool.rpm(), 0))
        .number(Numbers.fixed(tool.feedMmPerMin(), 0))
        .number(Numbers.fixed(tool.plungeMmPerMin(), 0))
        .number(Numbers.trimmed(tool.stepdownMm(), 2))
        .number(Numbers.fixed(frame.programZ(deepest), 3))
        .number(Durations.text(program.timeS()))
        .raw("</tr>\n");
  }

  /** Such as {@code flat, 3 mm, 2 flutes of 12 mm}. */
  private static String form(Tool tool) {
    return tool.shape().name().toLowerCase(Locale.ROOT)
        + ", "
        + Numbers.trimmed(tool.diameterMm(), 3)
        + " mm, "
        + tool.flutes()
        + (tool.flutes() == 1 ? " flute of " : " flutes of ")
        + Numbers.trimmed(tool.fluteLengthMm(), 1)
        + " mm";
  }

  /**
   * As given, or what the deepest cut asks for: the holder stays above the panel's highest place.
   */
  private static String stickOut(Tool tool, double deepestMm) {
    return tool.stickoutMm() > 0
        ? Numbers.trimmed(tool.stickoutMm(), 1)
        : "over " + Numbers.fixed(Math.ceil(deepestMm * 10) / 10, 1);
  }

  private static String does(PanelPlan plan, ToolProgram program) {
    if (PassComment.boresPins(program.text())) {
      return "bores the holes for the pins";
    }
    if (PassComment.cutsOutline(program.text())) {
      return "cuts the piece free: tabs hold it, stand clear";
    }
    TreeSet<Integer> plies =
        program.passes().stream()
            .map(ToolProgram.PassSummary::plyNumber)
            .collect(Collectors.toCollection(TreeSet::new));
    List<String> names =
        plies.stream().map(number -> plan.depths().of(number).ply()).map(Ply::name).toList();
    boolean finishing =
        plan.landscape().faces().isPresent() && program.tool().shape() != Tool.Shape.FLAT;
    return (finishing ? "follows the sculpted faces down to " : "clears down to ")
        + (names.size() > 4
            ? String.join(", ", names.subList(0, 3)) + " and " + (names.size() - 3) + " more"
            : String.join(", ", names));
  }
}
