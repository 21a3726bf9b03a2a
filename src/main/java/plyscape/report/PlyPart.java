package plyscape.report;

import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.report.json.Breaks;
import plyscape.text.Numbers;

/** The table of plies. */
final class PlyPart {

  private PlyPart() {}

  static void write(Html page, Landscape plan) {
    page.raw(
            "<section id=\"plies\">\n"
                + "<h2>Plies</h2>\n"
                + "<p class=\"hint\">Depths in mm below the top face of the pressed panel."
                + (plan.faces().isEmpty()
                    ? ""
                    : " Faces follow the terrain between two depths; the chance of a wrong colour"
                        + " is that at the worst place of each ply.")
                + "</p>\n")
        .table(
            "Ply",
            "Verdict",
            "Wood",
            "#Top",
            "#Bottom",
            "#Cut to",
            "#Available",
            "#Needed",
            "#Wrong colour",
            "#Area, mm2",
            "#Share",
            "#Elevation, m");
    for (PlyDepth depth : plan.depths()) {
      row(page, plan, depth);
    }
    page.endTable().raw("</section>\n");
  }

  private static void row(Html page, Landscape plan, PlyDepth depth) {
    int number = depth.ply().number();
    boolean shows = plan.tiling().exposed().containsKey(number);
    double area = shows ? plan.tiling().exposed().get(number).getArea() : 0;
    double[] breaks = Breaks.ofPly(plan, number);
    String grain = Numbers.trimmed(depth.ply().grainDeg(), 1) + "\u00b0";
    page.raw(shows ? "<tr><td>" : "<tr class=\"off\"><td>")
        .ply(depth.ply())
        .raw("</td>")
        .raw(!shows ? "<td>" : depth.reliable() ? "<td class=\"good\">" : "<td class=\"bad\">")
        .text(PlyVerdict.of(depth, shows))
        .raw("</td>")
        .cell(depth.ply().wood().isEmpty() ? grain : depth.ply().wood() + ", " + grain)
        .number(Numbers.fixed(depth.topMm(), 3))
        .number(Numbers.fixed(depth.bottomMm(), 3))
        .number(shows ? Words.cut(plan, number) : "-")
        .number(Numbers.fixed(depth.availableMm(), 3))
        .number(Numbers.fixed(depth.neededMm(), 3))
        .number(shows ? Words.chance(depth.risk()) : "-")
        .number(shows ? Numbers.fixed(area, 1) : "-")
        .number(shows ? Words.percent(area / plan.tiling().carved().area()) : "-")
        .number(
            breaks == null
                ? "-"
                : Numbers.fixed(breaks[0], 1) + " to " + Numbers.fixed(breaks[1], 1))
        .raw("</tr>\n");
  }
}
