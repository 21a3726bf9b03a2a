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
      page.raw("<tr>")
          .cell(f.file())
          .number(Numbers.fixed(f.travelMm(), 0))
          .number(Numbers.fixed(f.travelBoundMm(), 0))
          .number(Numbers.fixed(f.bytes() / 1000.0, 0))
          .number(Numbers.fixed(f.plainBytes() / 1000.0, 0))
          .number(Numbers.fixed(100 * f.wideMm() / Math.max(1e-9, f.cutMm()), 1) + " %")
          .number(Numbers.fixed(f.longestMm(), 1))
          .cell(
              f.longestMm() > 0
                  ? "X" + Numbers.fixed(f.longestX(), 1) + " Y" + Numbers.fixed(f.longestY(), 1)
                  : "")
          .number(f.longestMm() > 0 ? Numbers.fixed(f.longestFeed(), 0) : "")
          .raw("</tr>\n");
    }
    page.endTable().raw("</section>\n");
  }
}
