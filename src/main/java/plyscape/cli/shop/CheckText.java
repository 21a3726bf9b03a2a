package plyscape.cli.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.LeastFloor;
import plyscape.layup.PanelCorners;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.layup.advice.NextMeasurement;
import plyscape.layup.advice.ThinPlyAdvice;
import plyscape.text.Numbers;
import plyscape.text.Template;
import plyscape.text.TextTable;
import plyscape.text.Visible;

/** The outcome of {@code check} for a person: the table, the sums, the advice. */
final class CheckText {

  /** Least probability that is printed. */
  private static final double LEAST = 1e-6;

  private CheckText() {}

  /**
   * The whole text.
   *
   * @param swatches whether a patch of each colour may be shown, which takes a terminal that knows
   *     24-bit colour
   */
  static String of(CheckReport report, boolean swatches) {
    StringBuilder out = new StringBuilder();
    String table = table(report);
    out.append(swatches ? painted(table, report.depths()) : table);
    out.append('\n').append(total(report)).append('\n');
    for (String line : advice(report)) {
      out.append(Visible.line(line)).append('\n');
    }
    return out.toString();
  }

  private static String table(CheckReport report) {
    TextTable table =
        new TextTable()
            .right("no.")
            .left("ply")
            .left("colour")
            .right("top mm")
            .right("bottom")
            .right("mid")
            .right("target")
            .right("needed")
            .right("available")
            .right("risk")
            .left("verdict");
    for (PlyDepth d : report.depths()) {
      List<String> row = new ArrayList<>();
      row.add(Integer.toString(d.ply().number()));
      row.add(d.ply().name());
      row.add(d.ply().colour());
      for (double mm :
          new double[] {
            d.topMm(), d.bottomMm(), d.midMm(), d.targetMm(), d.neededMm(), d.availableMm()
          }) {
        row.add(Numbers.fixed(mm, 3));
      }
      row.add(share(d.risk()));
      row.add(verdict(d, report));
      table.row(row.toArray(new String[0]));
    }
    return table.text();
  }

  private static String verdict(PlyDepth d, CheckReport report) {
    LeastFloor floor = report.floor(d);
    String verdict = d.reliable() ? "reliable" : "too thin";
    if (d.reliable() && !report.reliable(d)) {
      PanelCorners all = report.corners().get(d.ply().number() - 1);
      verdict = "too thin at " + all.worstAt() + ", needs " + Numbers.fixed(all.neededWorstMm(), 3);
    }
    return report.floorKept(d)
        ? verdict
        : Template.fill(
            "%s, but only %.2f mm would stay under it%s",
            verdict, floor.floorMm(), floor.at() == null ? "" : " at " + floor.at());
  }

  /**
   * The first mention of a colour in a line gets a patch of it; table cells themselves hold no
   * control characters.
   */
  private static String painted(String table, Depths depths) {
    String[] lines = table.split("\n");
    for (int i = 0; i < depths.plies(); i++) {
      Ply ply = depths.of(i + 1).ply();
      int at = lines[i + 2].lastIndexOf(ply.colour());
      String patch =
          Template.fill(
              "\u001b[48;2;%s;%s;%sm%s\u001b[0m",
              ply.rgb() >> 16 & 255,
              ply.rgb() >> 8 & 255,
              ply.rgb() & 255,
              " ".repeat(ply.colour().length()));
      lines[i + 2] =
          lines[i + 2].substring(0, at)
              + patch
              + lines[i + 2].substring(at + ply.colour().length());
    }
    return String.join("\n", lines) + "\n";
  }

  private static String total(CheckReport report) {
    Layup layup = report.layup();
    double nominal = DepthModel.nominalThicknessMm(layup);
    double pressed = report.depths().thicknessMm();
    String measured =
        layup.measured().nothing()
            ? "nothing measured yet"
            : Template.fill("nominal %.3f, factor %.4f", nominal, pressed / nominal);
    return Template.fill(
        "Panel %.3f mm %s(%s); tolerances added by %s.",
        pressed,
        layup.measured().byPlace() ? "at " + report.at() + " " : "",
        measured,
        report.allowance().method().name().toLowerCase(Locale.ROOT));
  }

  private static List<String> advice(CheckReport report) {
    List<String> lines = new ArrayList<>();
    for (ThinPlyAdvice a : report.advice()) {
      lines.add("");
      lines.addAll(advice(a, report));
    }
    if (report.next() != null) {
      lines.add("");
      lines.add(next(report.next(), report.layup()));
    }
    return lines;
  }

  private static List<String> advice(ThinPlyAdvice a, CheckReport report) {
    PlyDepth d = report.depths().of(a.plyNumber());
    return List.of(
        Template.fill(
            "Ply %s (%s) has %.3f mm of clearance and needs %.3f. It would pass:",
            a.plyNumber(), d.ply().name(), d.availableMm(), d.neededMm()),
        Template.fill(
            "  at a thickness of %s mm instead of %.3f",
            up(a.thicknessMm()), d.ply().thicknessMm()),
        a.toleranceMm() == null
            ? "  not by better plies alone: even exact thicknesses wouldn't do"
            : "  with every ply within +-" + down(a.toleranceMm()) + " mm",
        a.flatnessMm() == null
            ? "  not by a flatter panel alone"
            : Template.fill(
                "  with a flatness of %s mm instead of %.3f",
                down(a.flatnessMm()), report.layup().flatnessMm()),
        "  " + measurement(a, report));
  }

  private static String next(NextMeasurement next, Layup layup) {
    return Template.fill(
        "To lower the area of wrong colour most, measure the bottom of ply %s (%s) at %s:"
            + " expected over all plies and places %s, then %s.",
        next.plyNumber(),
        layup.ply(next.plyNumber()).name(),
        next.where(),
        share(next.before()),
        share(next.after()));
  }

  private static String measurement(ThinPlyAdvice a, CheckReport report) {
    ThinPlyAdvice.Measurement best = a.best();
    if (best == null || !best.helps()) {
      return "measuring more of the panel wouldn't help this ply";
    }
    String what =
        best.bottomOfPly() == 0
            ? "measuring the panel's thickness"
            : Template.fill(
                "measuring the bottom of ply %s (%s)",
                best.bottomOfPly(), report.layup().plies().get(best.bottomOfPly() - 1).name());
    return Template.fill(
        "%s to +-%.3t mm helps most: needed %.3f%s; then %s of %s plies are unreliable",
        what,
        best.measuringToleranceMm(),
        best.neededMm(),
        best.passes() ? ", it passes" : ", still short",
        best.unreliable(),
        report.depths().plies());
  }

  /** Rounded so that what is said still passes. */
  private static String up(double mm) {
    return Numbers.fixed(Math.ceil(mm * 1000 - 1e-6) / 1000, 3);
  }

  private static String down(double mm) {
    return Numbers.fixed(Math.floor(mm * 1000 + 1e-6) / 1000, 3);
  }

  /** A probability in percent, small ones with an exponent that people read. */
  private static String share(double p) {
    if (p == 0) {
      return "0";
    }
    if (p < LEAST) { // below that, blunders rule
      return "<1e-06";
    }
    return p >= 1e-5 ? Numbers.fixed(100 * p, 3) + " %" : String.format(Locale.ROOT, "%.0e", p);
  }
}
