package plyscape.layup;

/**
 * What the cut and the finish add to the layup's own errors, and how much clearance is asked for.
 * Immutable.
 *
 * @param minimumMm least clearance of a finished face from its ply's edges
 * @param method how tolerances combine
 * @param zErrorMm plus or minus, of the machine's Z
 * @param sanding taken off after cutting
 * @param top what happens to the top ply
 * @param minimumFloorMm least wood left under the deepest cut
 */
public record CutAllowance(
    double minimumMm,
    Method method,
    double zErrorMm,
    Sanding sanding,
    Top top,
    double minimumFloorMm) {

  /** Taken off after cutting, mm. */
  public double sandingMm() {
    return sanding.depthMm();
  }

  /** Plus or minus of that. */
  public double sandingToleranceMm() {
    return sanding.toleranceMm();
  }
}
