package plyscape.layup.statistics;

/**
 * Probability that a finished face isn't inside its ply: every tolerance is read as 3 sigma of a
 * normal error, errors are added root-sum-square whatever the layup's method, and the two edges'
 * tails are added.
 *
 * <p>Exact for independent normal errors as long as a ply's edges can't change places.
 */
public final class ColourRisk {

  /** A tolerance is this many standard deviations. */
  public static final double SIGMAS = 3;

  private ColourRisk() {}

  /**
   * Risk of a face.
   *
   * @param aboveMm distance of the expected face from its ply's top edge
   * @param aboveToleranceMm plus or minus on that distance, boundary and cut together
   * @param belowMm the same from the bottom edge
   */
  public static double of(
      double aboveMm, double aboveToleranceMm, double belowMm, double belowToleranceMm) {
    return Math.min(1, tail(aboveMm, aboveToleranceMm) + tail(belowMm, belowToleranceMm));
  }

  private static double tail(double distanceMm, double toleranceMm) {
    if (toleranceMm == 0) {
      return distanceMm >= 0 ? 0 : 1;
    }
    return NormalTail.above(SIGMAS * distanceMm / toleranceMm);
  }
}
