package plyscape.layup;

/**
 * The glue between two plies, the same between all of them. Immutable.
 *
 * @param thicknessMm 0 or more
 * @param toleranceMm plus or minus, 0 or more
 */
public record GlueLine(double thicknessMm, double toleranceMm) {

  /** Checks the signs. */
  public GlueLine {
    if (!(thicknessMm >= 0 && toleranceMm >= 0)) {
      throw new IllegalArgumentException("glue line " + thicknessMm + " +-" + toleranceMm);
    }
  }
}
