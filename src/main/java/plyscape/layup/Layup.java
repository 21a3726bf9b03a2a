package plyscape.layup;

import java.util.List;
import java.util.SortedMap;

/**
 * A panel's plies, top to bottom, with its glue lines and what was measured on it. Immutable.
 *
 * @param file the layup file's name, for messages
 * @param name free text
 * @param plies top to bottom, at least one; numbers 1..n in order
 * @param glueLine between each two plies
 * @param measured on the pressed panel; may be {@link Measured#NOTHING}
 * @param flatnessMm plus or minus, how far the pressed panel is from flat
 */
public record Layup(
    String file,
    String name,
    List<Ply> plies,
    GlueLine glueLine,
    Measured measured,
    double flatnessMm) {

  /** Checks the order of plies, and that what was measured is one of them. */
  public Layup {
    plies = List.copyOf(plies);
    if (plies.isEmpty() || !(flatnessMm >= 0)) {
      throw new IllegalArgumentException(plies.size() + " plies, flatness " + flatnessMm);
    }
    for (int i = 0; i < plies.size(); i++) {
      if (plies.get(i).number() != i + 1) {
        throw new IllegalArgumentException("ply " + plies.get(i).number() + " at " + (i + 1));
      }
    }
    requirePlies(measured.bottoms(), plies.size());
    for (MeasuredPlace place : measured.places()) {
      requirePlies(place.bottoms(), plies.size());
    }
  }

  private static void requirePlies(Bottoms bottoms, int plies) {
    if (!bottoms.isEmpty() && bottoms.depthsMm().lastKey() > plies) {
      throw new IllegalArgumentException("measured bottom of ply " + bottoms.depthsMm().lastKey());
    }
  }

  /** The ply of that number, 1 at the top. */
  public Ply ply(int number) {
    return plies.get(number - 1);
  }

  /** The same panel of other plies. */
  public Layup withPlies(List<Ply> others) {
    return new Layup(file, name, others, glueLine, measured, flatnessMm);
  }

  /** The same with another flatness, plus or minus mm. */
  public Layup withFlatness(double otherMm) {
    return new Layup(file, name, plies, glueLine, measured, otherMm);
  }

  /** The same with other measurements. */
  public Layup withMeasured(Measured other) {
    return new Layup(file, name, plies, glueLine, other, flatnessMm);
  }

  /** The same with another measured thickness and its plus or minus, mm. */
  public Layup withThickness(double measuredMm, double toleranceMm) {
    return withMeasured(measured.withThickness(measuredMm, toleranceMm));
  }

  /**
   * The same on a panel of that size.
   *
   * @throws plyscape.fault.InputFault if a place lies outside of it
   */
  public Layup on(double widthMm, double heightMm) {
    for (MeasuredPlace place : measured.places()) {
      place.requireOn(widthMm, heightMm);
    }
    return withMeasured(measured.withCentre(PanelPoint.centreOf(widthMm, heightMm)));
  }

  /** The same panel, one of several that are pressed one by one: only what was measured on it. */
  public Layup ofTile(String tile) {
    return withMeasured(
        measured.withPlaces(
            measured.places().stream()
                .filter(p -> p.tile().isEmpty() || p.tile().equals(tile))
                .toList()));
  }

  /** The same with other measured bottoms and their plus or minus, mm; none when empty. */
  public Layup withBottoms(SortedMap<Integer, Double> measuredMm, double toleranceMm) {
    return withMeasured(measured.withBottoms(new Bottoms(measuredMm, toleranceMm)));
  }
}
