package plyscape.report;

import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;
import plyscape.text.TextTable;

/**
 * The plies of a plan as a table for the console: depths in mm, area in mm2, share of the carved
 * area, elevations in m.
 */
public final class PlyTable {

  private PlyTable() {}

  /** The table's text. */
  public static String text(Landscape plan) {
    TextTable table =
        new TextTable()
            .right("ply")
            .left("name")
            .right("top")
            .right("bottom")
            .right("cut to")
            .right("available")
            .right("needed")
            .right("area mm2")
            .right("share")
            .right("elevation m")
            .left("verdict");
    for (PlyDepth depth : plan.depths()) {
      int number = depth.ply().number();
      double area =
          plan.tiling().exposed().containsKey(number)
              ? plan.tiling().exposed().get(number).getArea()
              : 0;
      double[] breaks = Breaks.ofPly(plan, number);
      table.row(
          Integer.toString(number),
          depth.ply().name(),
          Numbers.fixed(depth.topMm(), 3),
          Numbers.fixed(depth.bottomMm(), 3),
          area > 0 ? Words.cut(plan, number) : "-",
          Numbers.fixed(depth.availableMm(), 3),
          Numbers.fixed(depth.neededMm(), 3),
          area > 0 ? Numbers.fixed(area, 1) : "-",
          area > 0 ? Words.percent(area / plan.tiling().carved().area()) : "-",
          breaks == null ? "-" : Numbers.fixed(breaks[0], 1) + " to " + Numbers.fixed(breaks[1], 1),
          PlyVerdict.of(depth, area > 0));
    }
    return table.text();
  }
}
