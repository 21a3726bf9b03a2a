package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plyscape.layup.DepthModel;
import plyscape.layup.Layup;
import plyscape.layup.Ply;
import plyscape.layup.Wood;
import plyscape.layup.advice.BalanceCheck;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * Everything that a pressing needs, in numbers. Immutable.
 *
 * @param layup what is pressed
 * @param order what the maker decided
 * @param thicknessMm nominal thickness of the pressed panel
 * @param veneers sheets to cut, top to bottom
 * @param findings trade rules that are broken
 * @param clamping pressure and force
 * @param movement change of thickness with moisture
 * @param cautions short sentences
 */
public record PressingSheet(
    Layup layup,
    PressingOrder order,
    double thicknessMm,
    List<Veneer> veneers,
    List<BalanceCheck.Finding> findings,
    GlueNeed glue,
    Clamping clamping,
    Movement movement,
    List<String> cautions) {

  /**
   * Density at which the light end of the pressure range is wanted, and the heavy end; between them
   * in proportion.
   */
  private static final double LIGHT_GRAVITY = 0.35;

  private static final double HEAVY_GRAVITY = 0.70;

  /**
   * 0.7 MPa (100 psi) for light woods to 1.7 MPa (247 psi) for the densest: <i>Wood Handbook</i>,
   * chapter 10.
   */
  static final double LIGHT_MPA = 0.7;

  private static final double HEAVY_MPA = 1.7;

  /** Epoxies want contact, not pressure (common practice). */
  private static final double CONTACT_MPA = 0.1;

  /** To spread a line and lay a sheet, min: common practice, no source. */
  private static final double LEAST_MIN_A_LINE = 1;

  private static final double KGF_PER_KN = 1000 / 9.80665;

  /**
   * A sheet to cut.
   *
   * @param ply which ply
   * @param alongMm size along its grain
   * @param acrossMm size across
   * @param turned grain's direction on the panel, degrees from X
   */
  public record Veneer(Ply ply, double alongMm, double acrossMm, double turned) {}

  /** Glue in grams: lines, area pressed in m2, spread in g/m2, a line, in all, and with waste. */
  public record GlueNeed(
      int lines,
      double areaM2,
      double spreadGPerM2,
      double lineG,
      double totalG,
      double withWasteG) {}

  /**
   * Pressure over the sheets as cut.
   *
   * @param pressureMpa chosen or asked for
   * @param wantedMpa what the densest of the woods wants of this glue
   * @param forceKn over the whole area
   * @param count jacks or clamps, 0 for a vacuum bag
   * @param densest the wood that sets the pressure, or "" when no wood is known
   */
  public record Clamping(
      double pressureMpa,
      double wantedMpa,
      double forceKn,
      double forceKgf,
      int count,
      String densest) {}

  /**
   * Change of the panel's thickness.
   *
   * @param perPercentMm for one percent of moisture, within 6 to 14 %
   * @param changeMm from the order's first to its second moisture, or null
   * @param unknown names of plies whose wood isn't in the table and that were left out
   */
  public record Movement(double perPercentMm, Double changeMm, List<String> unknown) {}

  /** Works a sheet out. */
  public static PressingSheet of(Layup layup, PressingOrder order) {
    List<Veneer> veneers = new ArrayList<>();
    double width = order.widthMm() + 2 * order.trimMm();
    double height = order.heightMm() + 2 * order.trimMm();
    for (Ply ply : layup.plies()) {
      double cos = Math.abs(Math.cos(Math.toRadians(ply.grainDeg())));
      double sin = Math.abs(Math.sin(Math.toRadians(ply.grainDeg())));
      veneers.add(
          new Veneer(
              ply,
              width * cos + height * sin,
              width * sin + height * cos,
              (ply.grainDeg() % 180 + 180) % 180));
    }
    double area = width * height * 1e-6;
    Clamping clamping = clamping(layup, order, area);
    List<BalanceCheck.Finding> findings = BalanceCheck.of(layup);
    return new PressingSheet(
        layup,
        order,
        DepthModel.nominalThicknessMm(layup),
        List.copyOf(veneers),
        findings,
        glue(layup, order, area),
        clamping,
        movement(layup, order),
        cautions(order, clamping, layup.plies().size() - 1));
  }

  private static GlueNeed glue(Layup layup, PressingOrder order, double area) {
    int lines = layup.plies().size() - 1;
    double spread =
        order.spreadGPerM2() == null ? order.glue().spreadGPerM2() : order.spreadGPerM2();
    double total = spread * area * lines;
    return new GlueNeed(
        lines, area, spread, spread * area, total, total * (1 + order.wasteShare()));
  }

  private static Clamping clamping(Layup layup, PressingOrder order, double area) {
    Wood densest = null;
    for (Ply ply : layup.plies()) {
      Optional<Wood> wood = Wood.in(ply.wood());
      if (wood.isPresent()
          && (densest == null || wood.get().specificGravity() > densest.specificGravity())) {
        densest = wood.get();
      }
    }
    double share =
        densest == null
            ? 0
            : (densest.specificGravity() - LIGHT_GRAVITY) / (HEAVY_GRAVITY - LIGHT_GRAVITY);
    double wanted =
        order.glue().contactPressure()
            ? CONTACT_MPA
            : LIGHT_MPA + Math.max(0, Math.min(1, share)) * (HEAVY_MPA - LIGHT_MPA);
    double pressure =
        order.pressureMpa() != null
            ? order.pressureMpa()
            : order.press() == Press.VACUUM ? Press.VACUUM_MPA : wanted;
    double force = pressure * area * 1000;
    int count =
        order.press() == Press.VACUUM ? 0 : (int) Math.ceil(force / order.forceEachKn() - 1e-9);
    return new Clamping(
        pressure, wanted, force, force * KGF_PER_KN, count, densest == null ? "" : densest.name());
  }

  private static Movement movement(Layup layup, PressingOrder order) {
    double perPercent = 0;
    double change = 0;
    List<String> unknown = new ArrayList<>();
    for (Ply ply : layup.plies()) {
      Optional<Wood> wood = Wood.in(ply.wood());
      if (wood.isEmpty()) {
        unknown.add(ply.name());
        continue;
      }
      double coefficient =
          order.quartered() ? wood.get().tangentialChange() : wood.get().radialChange();
      double shrinkage =
          order.quartered() ? wood.get().tangentialShrinkage() : wood.get().radialShrinkage();
      perPercent += ply.thicknessMm() * coefficient;
      if (order.moistureTo() != null) {
        change +=
            Moisture.change(
                ply.thicknessMm(),
                coefficient,
                shrinkage,
                order.moistureFrom(),
                order.moistureTo());
      }
    }
    return new Movement(
        perPercent, order.moistureTo() == null ? null : change, List.copyOf(unknown));
  }

  private static List<String> cautions(PressingOrder order, Clamping clamping, int lines) {
    List<String> out = new ArrayList<>();
    if (order.openMin() != null && order.openMin() < lines * LEAST_MIN_A_LINE) {
      out.add(
          Template.fill(
              "An open time of %.1t min is short for %s glue lines: a minute each goes fast (common"
                  + " practice). Take a slower glue, a second pair of hands, or press in two goes.",
              order.openMin(), lines));
    }
    if (order.press() == Press.VACUUM && clamping.wantedMpa() > Press.VACUUM_MPA + 1e-9) {
      out.add(
          Template.fill(
              "A vacuum bag gives about %.2f MPa, %.0f times less than these woods want: expect"
                  + " thicker glue lines, and measure the panel.",
              Press.VACUUM_MPA, clamping.wantedMpa() / Press.VACUUM_MPA));
    }
    if (order.moistureFrom() < 6 || order.moistureFrom() > 8) {
      out.add(
          "Sheets for cold pressing should be at 6 to 8 % moisture; these are stated at "
              + Numbers.trimmed(order.moistureFrom(), 1)
              + " %.");
    }
    out.add(
        "Glue, jack and press makers' sheets come first: the figures here are starting points.");
    out.add(
        "Gloves, eye protection and fresh air with the glue; keep hands and face clear of loaded"
            + " jacks and clamps.");
    out.add(
        "Mark the top face and the X edge of every sheet before glue is spread; sheets slip: pin"
            + " two corners in the trim.");
    out.add(
        "Let the panel rest a day or more between boards before cutting; then measure its thickness"
            + " and write it into the layup.");
    return List.copyOf(out);
  }
}
