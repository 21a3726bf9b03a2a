package plyscape.layup;

import java.util.List;
import java.util.SortedMap;
import plyscape.text.Template;

/**
 * What was measured on the pressed panel. Immutable.
 *
 * @param thicknessMm calipers on the whole panel, or null
 * @param thicknessToleranceMm plus or minus; may be stated before anything is measured
 * @param bottoms of plies, where {@code at} says
 * @param at where thickness and bottoms were measured, or null for the panel's centre
 * @param places bottoms of plies elsewhere
 * @param centre of the panel, from which the model counts places
 * @param pressTaper plus or minus on how much thicker the panel grows, as a share per 100 mm, or
 *     null where it isn't stated
 * @param pressBow the same from the centre outwards, as a share per (100 mm) squared; 0 for none
 */
public record Measured(
    Double thicknessMm,
    double thicknessToleranceMm,
    Bottoms bottoms,
    PanelPoint at,
    List<MeasuredPlace> places,
    PanelPoint centre,
    Double pressTaper,
    double pressBow) {

  /** What is believed of {@link #pressTaper()} as soon as something was measured by place. */
  public static final double USUAL_TAPER = 0.03;

  /** Centre of the panel that a job has unless it says otherwise. */
  public static final PanelPoint USUAL_CENTRE = PanelPoint.centreOf(240, 240);

  /** Nothing was measured. */
  public static final Measured NOTHING =
      new Measured(null, 0, Bottoms.NONE, null, List.of(), USUAL_CENTRE, null, 0);

  /** Checks the signs and keeps a copy. */
  public Measured {
    places = List.copyOf(places);
    if (!(thicknessToleranceMm >= 0)
        || (pressTaper != null && !(pressTaper >= 0))
        || !(pressBow >= 0)) {
      throw new IllegalArgumentException(
          Template.fill(
              "thickness +-%s, taper +-%s, bow +-%s", thicknessToleranceMm, pressTaper, pressBow));
    }
    if (thicknessMm != null && !(thicknessMm > 0)) {
      throw new IllegalArgumentException("a panel " + thicknessMm + " mm thick");
    }
  }

  /** Measured depths of ply bottoms at {@link #at()}, by ply number; may be empty. */
  public SortedMap<Integer, Double> bottomsMm() {
    return bottoms.depthsMm();
  }

  /** Plus or minus of those. */
  public double bottomsToleranceMm() {
    return bottoms.toleranceMm();
  }

  /** Whether depths differ from place to place. */
  public boolean byPlace() {
    return pressTaper != null || pressBow > 0 || !places.isEmpty();
  }

  /** What is believed of the press; no taper and no bow where depths are the same everywhere. */
  public PressShape press() {
    double taper = pressTaper != null ? pressTaper : byPlace() ? USUAL_TAPER : 0;
    return new PressShape(taper, pressBow);
  }

  /** The same with another thickness and its plus or minus, mm. */
  Measured withThickness(double otherMm, double toleranceMm) {
    return new Measured(otherMm, toleranceMm, bottoms, at, places, centre, pressTaper, pressBow);
  }

  /** The same with other bottoms. */
  public Measured withBottoms(Bottoms others) {
    return new Measured(
        thicknessMm, thicknessToleranceMm, others, at, places, centre, pressTaper, pressBow);
  }

  /** The same with other places. */
  public Measured withPlaces(List<MeasuredPlace> others) {
    return new Measured(
        thicknessMm, thicknessToleranceMm, bottoms, at, others, centre, pressTaper, pressBow);
  }

  /** The same on a panel with another centre. */
  public Measured withCentre(PanelPoint other) {
    return new Measured(
        thicknessMm, thicknessToleranceMm, bottoms, at, places, other, pressTaper, pressBow);
  }

  /** Whether nothing was measured. */
  public boolean nothing() {
    return thicknessMm == null && bottoms.isEmpty() && places.isEmpty();
  }
}
