package plyscape.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.report.json.Breaks;
import plyscape.text.Numbers;
import plyscape.text.TextTable;

/**
 * The plies of a plan as a table for the console: depths in mm, area in mm2, share of the carved
 * area, elevations in m.
 */
public final class PlyTable {

  private PlyTable() {}

  /** Columns that a narrow terminal does without, in this order. */
  private static final List<String> RARER =
      List.of("area mm2", "top", "bottom", "available", "needed", "elevation m", "share");

  /** The table's text, with as many columns as fit into a width. */
  public static String text(Landscape plan, int width) {
    String text = table(plan, RARER.subList(0, 0));
    for (int left = 1; left <= RARER.size() && widest(text) > width; left++) {
      text = table(plan, RARER.subList(0, left));
    }
    return text;
  }

  private static int widest(String text) {
    return text.lines().mapToInt(line -> line.codePointCount(0, line.length())).max().orElse(0);
  }

  private static String table(Landscape plan, List<String> without) {
    Map<String, Function<Row, String>> columns = columns(plan);
    columns.keySet().removeAll(without);
    TextTable table = new TextTable();
    columns
        .keySet()
        .forEach(
            head -> {
              if (head.equals("name") || head.equals("verdict")) {
                table.left(head);
              } else {
                table.right(head);
              }
            });
    for (PlyDepth depth : plan.depths()) {
      Row row = Row.of(plan, depth);
      table.row(columns.values().stream().map(cell -> cell.apply(row)).toArray(String[]::new));
    }
    return table.text();
  }

  /** A ply, and where it shows: area in mm2, 0 for nowhere, and elevations or null. */
  private record Row(PlyDepth depth, int number, double area, double[] breaks) {
    static Row of(Landscape plan, PlyDepth depth) {
      int number = depth.ply().number();
      MultiPolygon exposed = plan.tiling().exposed().get(number);
      double area = exposed == null ? 0 : exposed.getArea();
      return new Row(depth, number, area, Breaks.ofPly(plan, number));
    }

    String ifShown(String text) {
      return area > 0 ? text : "-";
    }
  }

  private static Map<String, Function<Row, String>> columns(Landscape plan) {
    double carved = plan.tiling().carved().area();
    Map<String, Function<Row, String>> columns = new LinkedHashMap<>();
    columns.put("ply", row -> Integer.toString(row.number));
    columns.put("name", row -> row.depth.ply().name());
    columns.put("top", row -> Numbers.fixed(row.depth.topMm(), 3));
    columns.put("bottom", row -> Numbers.fixed(row.depth.bottomMm(), 3));
    columns.put("cut to", row -> row.ifShown(Words.cut(plan, row.number)));
    columns.put("available", row -> Numbers.fixed(row.depth.availableMm(), 3));
    columns.put("needed", row -> Numbers.fixed(row.depth.neededMm(), 3));
    columns.put("area mm2", row -> row.ifShown(Numbers.fixed(row.area, 1)));
    columns.put("share", row -> row.ifShown(Words.percent(row.area / carved)));
    columns.put(
        "elevation m",
        row ->
            row.breaks == null
                ? "-"
                : Numbers.fixed(row.breaks[0], 1) + " to " + Numbers.fixed(row.breaks[1], 1));
    columns.put("verdict", row -> PlyVerdict.of(row.depth, row.area > 0));
    return columns;
  }
}
