package plyscape.standing;

/**
 * The finished face of a ply. Immutable.
 *
 * @param ply its number, from 1 at the top
 * @param faceMm its depth below the panel's top face, positive down
 * @param grainDegrees direction of its grain from X, counter-clockwise; NaN where it isn't known
 */
public record Terrace(int ply, double faceMm, double grainDegrees) {

  /** Checks number and depth. */
  public Terrace {
    if (ply < 1 || !(faceMm >= 0)) {
      throw new IllegalArgumentException("no terrace: ply " + ply + " at " + faceMm + " mm");
    }
  }
}
