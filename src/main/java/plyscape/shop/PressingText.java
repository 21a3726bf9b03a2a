package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.layup.advice.BalanceCheck;
import plyscape.text.Numbers;
import plyscape.text.Template;
import plyscape.text.TextTable;
import plyscape.text.Visible;

/**
 * The pressing sheet in words: one list of facts, which the text and the page on the wall share.
 */
public final class PressingText {

  /** More jacks or clamps than most people have. */
  private static final int MANY = 6;

  private PressingText() {}

  /** The sheet as plain text. */
  public static String text(PressingSheet sheet) {
    StringBuilder out = new StringBuilder();
    out.append("Pressing sheet: ").append(Visible.line(sheet.layup().name())).append("\n\n");
    TextTable table =
        new TextTable()
            .right("ply")
            .left("name")
            .left("wood")
            .right("thick")
            .right("grain")
            .right("along grain")
            .right("across");
    for (PressingSheet.Veneer v : sheet.veneers()) {
      table.row(
          String.valueOf(v.ply().number()),
          v.ply().name(),
          v.ply().wood(),
          Numbers.fixed(v.ply().thicknessMm(), 2),
          Numbers.trimmed(v.turned(), 1),
          Numbers.trimmed(v.alongMm(), 1),
          Numbers.trimmed(v.acrossMm(), 1));
    }
    out.append(table.text()).append('\n');
    for (String fact : facts(sheet)) {
      out.append(Visible.line(fact)).append('\n');
    }
    out.append("\nBalance: ")
        .append(sheet.findings().isEmpty() ? "odd, crossed and the same from both sides.\n" : "\n");
    for (BalanceCheck.Finding f : sheet.findings()) {
      out.append("- ").append(Visible.line(f.what() + "; " + f.mend())).append('\n');
    }
    out.append('\n');
    for (String caution : sheet.cautions()) {
      out.append("! ").append(caution).append('\n');
    }
    return out.toString();
  }

  /** Facts in the order of the work, one sentence each. */
  static List<String> facts(PressingSheet s) {
    PressingOrder o = s.order();
    List<String> facts = new ArrayList<>();
    facts.add(
        Template.fill(
            "Panel %s x %s mm after trimming %s mm a side; nominal thickness %.2f mm.",
            n(o.widthMm()), n(o.heightMm()), n(o.trimMm()), s.thicknessMm()));
    facts.add(glue(s));
    facts.add(pressure(s));
    facts.addAll(clamps(s));
    facts.add(
        Template.fill(
            "Open time %s, press time %s%s",
            minutes(o.openMin()),
            minutes(o.pressMin()),
            o.openMin() == null || o.pressMin() == null ? " (from the glue's data sheet)." : "."));
    facts.add(moisture(s));
    if (!s.movement().unknown().isEmpty()) {
      facts.add(
          "Not in that figure, wood unknown: " + String.join(", ", s.movement().unknown()) + ".");
    }
    return facts;
  }

  private static String glue(PressingSheet s) {
    return Template.fill(
        "Glue: %s, %.1t g/m2 on one side of each of %s lines over %.4f m2: %.1f g a line, %.0f"
            + " g in all, %.0f g with %s %% waste.",
        s.order().glue().label(),
        s.glue().spreadGPerM2(),
        s.glue().lines(),
        s.glue().areaM2(),
        s.glue().lineG(),
        s.glue().totalG(),
        s.glue().withWasteG(),
        n(100 * s.order().wasteShare()));
  }

  private static String pressure(PressingSheet s) {
    PressingOrder o = s.order();
    PressingSheet.Clamping c = s.clamping();
    boolean byWood =
        o.pressureMpa() == null && o.press() != Press.VACUUM && !o.glue().contactPressure();
    String wood =
        c.densest().isEmpty()
            ? " (light woods; no known wood is named)"
            : " (for " + c.densest() + ")";
    return Template.fill(
        "Pressure: %.2f MPa%s, force %.1f kN = %.0f kgf.",
        c.pressureMpa(), byWood ? wood : "", c.forceKn(), c.forceKgf());
  }

  /** How many clamps or jacks, and what few of them come to. */
  private static List<String> clamps(PressingSheet s) {
    PressingSheet.Clamping c = s.clamping();
    double eachKn = s.order().forceEachKn();
    List<String> facts = new ArrayList<>();
    if (c.count() > 0) {
      facts.add(
          s.order().press() == Press.JACKS
              ? "Jacks: " + c.count() + " of " + n(eachKn) + " kN."
              : "Clamps: " + c.count() + " of " + n(eachKn) + " kN, over stiff cauls.");
    }
    if (c.count() > MANY) {
      facts.add(
          Template.fill(
              "Six of them give %.2f MPa; the Wood Handbook's least, for light woods, is %.2f MPa.",
              c.pressureMpa() * MANY / (c.forceKn() / eachKn), PressingSheet.LIGHT_MPA));
    }
    return facts;
  }

  private static String moisture(PressingSheet s) {
    PressingOrder o = s.order();
    String cut = o.quartered() ? "quarter-cut" : "peeled or flat-sliced";
    String change =
        s.movement().changeMm() == null
            ? "."
            : String.format(
                Locale.ROOT,
                "; from %s to %s %%: %+.3f mm.",
                n(o.moistureFrom()),
                n(o.moistureTo()),
                s.movement().changeMm());
    return Template.fill(
            "Moisture: each percent moves the thickness by %.4f mm (%s veneer, 6 to 14 %%)",
            s.movement().perPercentMm(), cut)
        + change;
  }

  private static String minutes(Double value) {
    return value == null ? "____ min" : n(value) + " min";
  }

  private static String n(double value) {
    return Numbers.trimmed(value, 2);
  }
}
