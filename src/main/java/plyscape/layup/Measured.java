package plyscape.layup;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What was measured on the pressed panel. Immutable.
 *
 * @param thicknessMm calipers on the whole panel, or null
 * @param thicknessToleranceMm plus or minus; may be stated before anything is measured
 * @param bottomsMm ply number to the measured depth of its bottom; may be empty
 * @param bottomsToleranceMm plus or minus
 */
public record Measured(
    Double thicknessMm,
    double thicknessToleranceMm,
    SortedMap<Integer, Double> bottomsMm,
    double bottomsToleranceMm) {

  /** Nothing was measured. */
  public static final Measured NOTHING = new Measured(null, 0, new TreeMap<>(), 0);

  /** Checks the signs and keeps a copy. */
  public Measured {
    bottomsMm = Collections.unmodifiableSortedMap(new TreeMap<>(bottomsMm));
    if (!(thicknessToleranceMm >= 0 && bottomsToleranceMm >= 0)) {
      throw new IllegalArgumentException(
          "tolerances of measurements: " + thicknessToleranceMm + ", " + bottomsToleranceMm);
    }
    if (thicknessMm != null && !(thicknessMm > 0)) {
      throw new IllegalArgumentException("a panel " + thicknessMm + " mm thick");
    }
  }

  /** The same with another thickness and its plus or minus, mm. */
  Measured withThickness(double otherMm, double toleranceMm) {
    return new Measured(otherMm, toleranceMm, bottomsMm, bottomsToleranceMm);
  }

  /** The same with other bottoms and their plus or minus, mm. */
  Measured withBottoms(SortedMap<Integer, Double> othersMm, double toleranceMm) {
    return new Measured(thicknessMm, thicknessToleranceMm, othersMm, toleranceMm);
  }

  /** Whether nothing was measured. */
  public boolean nothing() {
    return thicknessMm == null && bottomsMm.isEmpty();
  }
}
