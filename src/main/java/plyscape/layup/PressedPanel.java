package plyscape.layup;

import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.layup.statistics.BestEstimate;
import plyscape.text.Template;

/**
 * Where every boundary of a layup lies in the pressed panel, at every place, and how sure that is:
 * the one estimate from all that was measured (src/contract.md, sections 3 and 11). Depths in mm
 * below the top face; interfaces are those of {@link LayerStack}. Immutable.
 */
public final class PressedPanel {

  /** A reading farther than this many deviations from what the others say is none of them. */
  private static final double MOST_SIGMAS = 5;

  private final Layup layup;
  private final PanelPoint centre;
  private final LayerStack stack;
  private final List<StackReading> readings;
  private final StackEstimate estimate;

  private PressedPanel(Layup layup, List<StackReading> readings) {
    this.layup = layup;
    centre = layup.measured().centre();
    stack = LayerStack.of(layup);
    this.readings = readings;
    estimate = new StackEstimate(stack, layup.measured().press(), readings);
  }

  /**
   * Estimates where the plies lie.
   *
   * @param acceptThickness believe readings however far they are from nominal
   * @throws InputFault if readings contradict each other, are out of order or out of 0.85..1.10 of
   *     nominal, or the estimated depths don't increase
   */
  public static PressedPanel of(Layup layup, boolean acceptThickness) {
    List<StackReading> readings = LayupReadings.of(layup);
    LayupReadings.requireOrder(readings);
    if (!acceptThickness) {
      readings.forEach(r -> LayupReadings.requireBelievable(layup, r));
    }
    PressedPanel panel = new PressedPanel(layup, readings);
    panel.requireAgreement();
    if (!acceptThickness) {
      panel.requireBelievableThickness();
    }
    panel.requireIncrease(panel.centre);
    layup.measured().places().forEach(p -> panel.requireIncrease(p.at()));
    return panel;
  }

  /** The same whatever contradicts: for layups that are only thought of. */
  public static PressedPanel unchecked(Layup layup) {
    return new PressedPanel(layup, LayupReadings.of(layup));
  }

  /** The nominal stack. */
  public LayerStack stack() {
    return stack;
  }

  /** Expected depth of an interface at a place. */
  public double depthMm(int interfaceIndex, PanelPoint at) {
    return estimate
        .at(interfaceIndex)
        .depthMm(LayupReadings.x(at, centre), LayupReadings.y(at, centre));
  }

  /** The same at the panel's centre. */
  public double depthMm(int interfaceIndex) {
    return depthMm(interfaceIndex, centre);
  }

  /** Plus or minus on the depth of an interface at a place. */
  public double toleranceMm(int interfaceIndex, PanelPoint at, Method method) {
    return estimate
        .at(interfaceIndex)
        .toleranceMm(LayupReadings.x(at, centre), LayupReadings.y(at, centre), method);
  }

  /** The panel's centre. */
  PanelPoint centre() {
    return centre;
  }

  /** Where things were measured that nobody says a place of. */
  public PanelPoint measuredAt() {
    return layup.measured().at() == null ? centre : layup.measured().at();
  }

  /** All that was measured. */
  List<StackReading> readings() {
    return readings;
  }

  /** How unevenly the press may have squeezed it. */
  PressShape press() {
    return layup.measured().press();
  }

  private void requireBelievableThickness() {
    double nominal = stack.totalMm(0, stack.layers());
    double thickness = depthMm(stack.layers());
    if (!LayupReadings.believable(thickness / nominal)) {
      throw new InputFault(
          new Place(layup.file(), 0, 0, "measured_bottoms"),
          Template.fill(
              "what was measured makes the panel %.3f mm thick, but plies and glue lines add up to"
                  + " %.3f mm: %.3f times",
              thickness, nominal, thickness / nominal),
          LayupReadings.BELIEVED);
    }
  }

  /** No reading may contradict all the others. */
  private void requireAgreement() {
    int worst = -1;
    double most = MOST_SIGMAS;
    for (int i = 0; i < readings.size(); i++) {
      BestEstimate.LeftOut left = estimate.leftOut(i);
      double sigmas = Math.abs(left.off()) / left.sigma();
      if (sigmas > most) {
        most = sigmas;
        worst = i;
      }
    }
    if (worst >= 0) {
      StackReading reading = readings.get(worst);
      BestEstimate.LeftOut left = estimate.leftOut(worst);
      throw new InputFault(
          reading.where(),
          Template.fill(
              "%s, %.3f mm, contradicts the rest: the other readings and the plies' tolerances put"
                  + " it at %.3f mm +-%.3f (3 sigma)",
              reading.what(), reading.depthMm(), reading.depthMm() - left.off(), 3 * left.sigma()),
          "measure it again, leave it out, or give honest tolerances to plies and readings; a panel"
              + " that the press left thinner in its middle wants press_bow");
    }
  }

  private void requireIncrease(PanelPoint at) {
    for (int k = 1; k <= stack.layers(); k++) {
      double upper = depthMm(k - 1, at);
      double lower = depthMm(k, at);
      boolean glueOfNothing = stack.thicknessMm(k - 1) == 0;
      if (glueOfNothing ? lower < upper - stack.toleranceMm(k - 1) - 1e-9 : !(lower > upper)) {
        throw new InputFault(
            new Place(layup.file(), 0, 0, "measured_bottoms"),
            Template.fill(
                "by what was measured %s, %.3f mm, is not below %s, %.3f mm",
                name(k), lower, name(k - 1), upper),
            "depths must increase strictly from top to bottom: measure the two again");
      }
    }
  }

  private String name(int interfaceIndex) {
    if (interfaceIndex == 0) {
      return "the top face";
    }
    Ply ply = layup.ply(interfaceIndex / 2 + 1);
    return Template.fill(
        "the %s of ply %d (%s)",
        interfaceIndex % 2 == 1 ? "bottom" : "top", ply.number(), ply.name());
  }
}
