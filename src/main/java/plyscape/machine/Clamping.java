package plyscape.machine;

/**
 * How a cutter is held, mm. Immutable. What isn't known is 0.
 *
 * @param shankDiameterMm diameter of the plain part above the flutes
 * @param stickoutMm from the tip to the holder's face
 * @param holderDiameterMm diameter of the holder (collet nut) at its face
 */
public record Clamping(double shankDiameterMm, double stickoutMm, double holderDiameterMm) {

  /** Nothing is known. */
  public static final Clamping UNKNOWN = new Clamping(0, 0, 0);

  /** Checks that nothing is negative. */
  public Clamping {
    Check.notNegative("shank diameter", shankDiameterMm);
    Check.notNegative("stickout", stickoutMm);
    Check.notNegative("holder diameter", holderDiameterMm);
  }
}
