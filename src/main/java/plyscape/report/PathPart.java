package plyscape.report;

import plyscape.plan.PanelPlan;
import plyscape.plan.PathFigures;
import plyscape.plan.ToolProgram;
import plyscape.text.Numbers;

/** How good the paths are: travel, size, and where the cut is wider than the stepover. */
final class PathPart {

  private PathPart() {}

  /** How good the paths are, program by program. */
  static void write(Html page, PanelPlan plan) {
    page.raw(
        "<section id=\"paths\">\n"
            + "<h2>Paths</h2>\n"
            + "<p>No order of the same cuts needs less travel than the bound (the shortest tree"
            + " over the gaps between them). Wider cuts than the stepover run at less feed; the"
            + " place is where the longest one in one go begins.</p>\n");
    page.table(
        "File",
        "#Travel, mm",
        "#Bound, mm",
        "#Size, kB",
        "#Without arcs, kB",
        "#Wider than the stepover",
        "#Longest, mm",
        "At",
        "#Feed there");
    for (ToolProgram program : plan.programs()) {
      PathFigures f = program.paths();
      PathFigures.Stretch longest = f.width().longest();
      page.raw("<tr>")
          .cell(f.file())
          .number(Numbers.fixed(f.way().travelMm(), 0))
          .number(Numbers.fixed(f.way().boundMm(), 0))
          .number(Numbers.fixed(f.size().bytes() / 1000.0, 0))
          .number(Numbers.fixed(f.size().plainBytes() / 1000.0, 0))
          .number(
              Numbers.fixed(100 * f.width().wideMm() / Math.max(1e-9, f.width().cutMm()), 1) + " %")
          .number(Numbers.fixed(longest.mm(), 1))
          .cell(
              longest.mm() > 0
                  ? "X" + Numbers.fixed(longest.x(), 1) + " Y" + Numbers.fixed(longest.y(), 1)
                  : "")
          .number(longest.mm() > 0 ? Numbers.fixed(longest.feed(), 0) : "")
          .raw("</tr>\n");
    }
    page.endTable().raw("</section>\n");
  }
}
