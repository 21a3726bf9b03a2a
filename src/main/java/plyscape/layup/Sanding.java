package plyscape.layup;

/**
 * What is taken off every face after cutting. Immutable.
 *
 * @param depthMm plain depth
 * @param toleranceMm plus or minus
 * @param blockMm width of the sanding block: a floor narrower than this may stay as it was cut; 0
 *     for a sponge that reaches everything
 */
public record Sanding(double depthMm, double toleranceMm, double blockMm) {

  /** A usual block, mm (common practice, no source). */
  public static final double USUAL_BLOCK_MM = 30;

  /** Checks the signs. */
  public Sanding {
    if (!(depthMm >= 0 && toleranceMm >= 0 && blockMm >= 0)) {
      throw new IllegalArgumentException(
          "sanding " + depthMm + " +-" + toleranceMm + " with a block of " + blockMm);
    }
  }

  /** With a usual block. */
  public Sanding(double depthMm, double toleranceMm) {
    this(depthMm, toleranceMm, USUAL_BLOCK_MM);
  }
}
