package plyscape.shop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.files.CsvRows;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.layup.calibration.Reading;
import plyscape.text.NearestName;
import plyscape.text.Template;

/**
 * Readings of ply edges from a comma-separated file with a head row. Columns: {@code ply} (number
 * or name) and either {@code depth} (mm) with {@code edge} ({@code bottom}, the default, or {@code
 * top}) and {@code tolerance} (plus or minus) where wanted; or {@code from} and {@code to}: the
 * last depth at which the ply was seen and the first that showed the next one. Rows without any
 * value are passed over. Instead of {@code from} and {@code to}, {@code pad} takes the number of
 * the last pad of a coupon that shows the ply; {@code x} and {@code y} say where on the panel.
 */
public final class ReadingsFile {

  private static final List<String> COLUMNS =
      List.of("ply", "edge", "depth", "tolerance", "from", "to", "pad", "x", "y");
  private static final double MOST_MM = 1000;

  /** A boundary seen between two equal depths is still not known better than this. */
  private static final double LEAST_HALF_MM = 0.002;

  private final String file;
  private final Layup layup;
  private final List<String> head;
  private final CouponPads pads;

  private ReadingsFile(String file, Layup layup, List<String> head, CouponPads pads) {
    this.pads = pads;
    this.file = file;
    this.layup = layup;
    this.head = head;
  }

  /**
   * Reads a file's text.
   *
   * @param file its name, for messages
   * @throws InputFault with the row's number if anything in it can't be taken, or nothing was read
   */
  public static List<Reading> parse(String file, String text, Layup layup) {
    List<CsvRows.Row> rows = CsvRows.of(file, text);
    if (rows.isEmpty()) {
      throw new InputFault(
          Place.file(file), "no rows", "wanted a head row such as ply,depth and a row a reading");
    }
    List<String> head = rows.get(0).cells().stream().map(c -> c.toLowerCase(Locale.ROOT)).toList();
    ReadingsFile readings = new ReadingsFile(file, layup, head, CouponPads.in(text));
    readings.checkHead(rows.get(0).line());
    List<Reading> out = new ArrayList<>();
    for (CsvRows.Row row : rows.subList(1, rows.size())) {
      Reading reading = readings.reading(row);
      if (reading != null) {
        out.add(reading);
      }
    }
    if (out.isEmpty()) {
      throw new InputFault(
          Place.file(file), "no row with a reading", "fill in the depths that were read");
    }
    readings.requireNoNumbers(rows.get(0).line(), out);
    return List.copyOf(out);
  }

  /** Depths that are all the numbers of their plies were hardly measured. */
  private void requireNoNumbers(int line, List<Reading> all) {
    boolean numbers =
        head.contains("depth") && all.stream().allMatch(r -> r.depthMm() == r.plyNumber());
    if (numbers && all.stream().mapToInt(Reading::plyNumber).distinct().count() > 1) {
      throw fault(
          line,
          "depths that are the numbers of their plies, row for row",
          "wanted the depth in mm at which each ply ends, such as 2.92");
    }
  }

  /**
   * Checks that places lie on a panel of that size, mm, or in the waste around it.
   *
   * @throws InputFault with the row's number if one doesn't
   */
  public static void requireOn(
      String file, List<Reading> readings, double widthMm, double heightMm) {
    for (Reading r : readings) {
      if (r.at() != null && !r.at().on(widthMm, heightMm)) {
        throw new InputFault(
            Place.at(file, r.row(), 1),
            Template.fill(
                "row %s: read at %s, outside the panel of %.2t x %.2t mm",
                r.row(), r.at(), widthMm, heightMm),
            "x and y are mm from the panel's lower left corner; --panel says how large it is");
      }
    }
  }

  private void checkHead(int line) {
    if (head.size() == 1 && head.get(0).contains(";")) {
      throw fault(
          line,
          "columns parted by semicolons",
          "part them by commas, and write decimals with a point: ply,depth and below it 1,0.92");
    }
    for (String name : head) {
      if (!COLUMNS.contains(name)) {
        throw fault(line, "a column \"" + name + "\"", NearestName.hint(name, COLUMNS));
      }
    }
    if (head.stream().distinct().count() < head.size()) {
      throw fault(line, "a column that is named twice", "name each once");
    }
    boolean depth = head.contains("depth");
    boolean range = head.contains("from") && head.contains("to");
    boolean pad = head.contains("pad");
    if (!head.contains("ply") || (depth ? 1 : 0) + (range ? 1 : 0) + (pad ? 1 : 0) != 1) {
      throw fault(
          line, "columns " + String.join(", ", head), "wanted ply,depth or ply,from,to or ply,pad");
    }
    if (pad && pads.count() == 0) {
      throw fault(
          line,
          "a column pad, and no line \"# pads:\" with their depths",
          "keep the comments of the coupon's readings.csv, or give depths in from and to");
    }
    if (head.contains("x") != head.contains("y")) {
      throw fault(line, "one of the columns x and y", "give both: where on the panel, in mm");
    }
  }

  private Reading reading(CsvRows.Row row) {
    if (row.cells().size() != head.size()) {
      throw fault(
          row.line(),
          row.cells().size() + " cells",
          "wanted "
              + head.size()
              + ": "
              + String.join(",", head)
              + (row.cells().size() > head.size() ? "; decimals take a point, such as 2.92" : ""));
    }
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < head.size(); i++) {
      cells.put(head.get(i), row.cells().get(i));
    }
    boolean empty =
        List.of("from", "to", "depth", "pad").stream()
            .allMatch(name -> cells.getOrDefault(name, "").isEmpty());
    if (empty && cells.getOrDefault("tolerance", "").isEmpty()) {
      ply(row.line(), cells.get("ply"));
      return null;
    }
    int ply = ply(row.line(), cells.get("ply"));
    return head.contains("depth") ? depth(row.line(), ply, cells) : between(row.line(), ply, cells);
  }

  private Reading depth(int line, int ply, Map<String, String> cells) {
    String edge = cells.getOrDefault("edge", "").toLowerCase(Locale.ROOT);
    if (!edge.isEmpty() && !edge.equals("top") && !edge.equals("bottom")) {
      throw fault(line, "edge \"" + edge + "\"", "wanted top or bottom");
    }
    boolean top = edge.equals("top");
    if (top && ply == 1) {
      throw fault(line, "the top of ply 1", "that is the top face, depth 0; give other edges");
    }
    double depth = number(line, "depth", cells.get("depth"), 0);
    String stated = cells.getOrDefault("tolerance", "");
    double tolerance = stated.isEmpty() ? 0 : number(line, "tolerance", stated, 0);
    requireDepth(line, ply, depth, cells.get("depth"));
    return new Reading(line, ply, top, depth, tolerance, at(line, cells), false);
  }

  private Reading between(int line, int ply, Map<String, String> cells) {
    if (ply == layup.plies().size()) {
      throw fault(
          line,
          "the last ply",
          "no other colour comes below it; measure the panel's thickness instead");
    }
    double[] range = head.contains("pad") ? pads(line, cells) : range(line, ply, cells);
    double from = range[0];
    double to = range[1];
    if (!(to > from)) {
      throw fault(line, "from " + from + " to " + to, "wanted a to that is deeper than from");
    }
    // The glue line lies in between too: the bottom is between from and to less the glue line.
    double half = Math.max((to - layup.glueLine().thicknessMm() - from) / 2, LEAST_HALF_MM);
    double stated =
        cells.getOrDefault("tolerance", "").isEmpty()
            ? 0
            : number(line, "tolerance", cells.get("tolerance"), 0);
    // Anywhere in between with equal chance: deviation half / sqrt(3), of which three make the plus
    // or minus.
    double tolerance = Math.hypot(Math.sqrt(3) * half, stated);
    return new Reading(
        line,
        ply,
        false,
        (from + to - layup.glueLine().thicknessMm()) / 2,
        tolerance,
        at(line, cells),
        true);
  }

  /** Depths of the pad with a number and the next one. */
  private double[] pads(int line, Map<String, String> cells) {
    double pad = number(line, "pad", cells.get("pad"), -1);
    if (!pads.has(pad) || !pads.has(pad + 1)) {
      throw fault(
          line,
          "pad \"" + cells.get("pad") + "\"",
          "wanted the number of the last pad that shows the ply, 0 to " + (pads.count() - 1));
    }
    return new double[] {pads.depthMm(pad), pads.depthMm(pad + 1)};
  }

  /** Two depths, or two numbers of pads that can't be depths. */
  private double[] range(int line, int ply, Map<String, String> cells) {
    double from = number(line, "from", cells.get("from"), -1);
    double to = number(line, "to", cells.get("to"), 0);
    boolean whole = cells.get("from").matches("\\d+") && cells.get("to").matches("\\d+");
    if (!whole || possible(ply, (from + to) / 2)) {
      return new double[] {from, to};
    }
    if (!pads.has(from) || !pads.has(to)) {
      requireDepth(line, ply, (from + to) / 2, cells.get("from"));
    }
    return new double[] {pads.depthMm(from), pads.depthMm(to)};
  }

  private PanelPoint at(int line, Map<String, String> cells) {
    String x = cells.getOrDefault("x", "");
    String y = cells.getOrDefault("y", "");
    if (x.isEmpty() && y.isEmpty()) {
      return null;
    }
    return new PanelPoint(place(line, "x", x), place(line, "y", y));
  }

  private double place(int line, String axis, String text) {
    if (!text.matches("[+-]?(\\d{1,5}(\\.\\d{0,6})?|\\.\\d{1,6})")) {
      throw fault(line, axis + " \"" + text + "\"", "wanted mm from the panel's lower left corner");
    }
    return Double.parseDouble(text);
  }

  /** Whether a ply's bottom can lie there: within twice of what the layup says. */
  private boolean possible(int ply, double depthMm) {
    double share = depthMm / nominalMm(ply);
    return share >= 0.5 && share <= 2;
  }

  private double nominalMm(int ply) {
    double sum = layup.glueLine().thicknessMm() * (ply - 1);
    for (Ply above : layup.plies().subList(0, ply)) {
      sum += above.thicknessMm();
    }
    return sum;
  }

  /** A whole number that is no depth is likely one of a pad. */
  private void requireDepth(int line, int ply, double depthMm, String text) {
    if (text.matches("\\d+") && !possible(ply, depthMm)) {
      throw fault(
          line,
          Template.fill(
              "%s for an edge of ply %s, whose bottom lies near %.2f mm in a panel of %.2f mm",
              text, ply, nominalMm(ply), nominalMm(layup.plies().size())),
          "wanted a depth in mm; is it the number of a pad? The gauge gives each pad's depth, and a"
              + " column pad takes numbers");
    }
  }

  private int ply(int line, String text) {
    for (Ply ply : layup.plies()) {
      if (ply.name().equals(text) || String.valueOf(ply.number()).equals(text)) {
        return ply.number();
      }
    }
    throw fault(
        line,
        "no ply \"" + text + "\" in " + layup.file(),
        NearestName.hint(text, layup.plies().stream().map(Ply::name).toList())
            + ", or numbers 1 to "
            + layup.plies().size());
  }

  private double number(int line, String what, String text, double above) {
    double value = Double.NaN;
    if (text.matches("[+-]?(\\d{1,9}(\\.\\d{0,12})?|\\.\\d{1,12})")) {
      value = Double.parseDouble(text);
    }
    if (!(value > above && value < MOST_MM)) {
      throw fault(
          line,
          what + " \"" + text + "\"",
          "wanted millimetres "
              + (above < 0 ? "from 0" : "above 0")
              + ", with a point, such as 2.92");
    }
    return value;
  }

  private InputFault fault(int line, String found, String wanted) {
    return new InputFault(Place.at(file, line, 1), "row " + line + ": found " + found, wanted);
  }
}
