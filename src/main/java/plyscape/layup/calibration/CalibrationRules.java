package plyscape.layup.calibration;

/**
 * What is known of readings beside their values. Immutable.
 *
 * @param readingToleranceMm plus or minus of a reading that states none, where their scatter
 *     doesn't tell it
 * @param stated take that even where scatter would tell
 * @param cutToleranceMm plus or minus of what all readings off one test cut share: its zero, the
 *     machine's Z, how flat the wood lay under it
 */
public record CalibrationRules(double readingToleranceMm, boolean stated, double cutToleranceMm) {

  /** Checks the signs. */
  public CalibrationRules {
    if (!(readingToleranceMm > 0 && cutToleranceMm >= 0)) {
      throw new IllegalArgumentException(
          "reading +-" + readingToleranceMm + ", cut +-" + cutToleranceMm);
    }
  }
}
