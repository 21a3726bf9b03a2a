package plyscape.machine;

/**
 * How fast and how truly a machine moves. Immutable.
 *
 * @param rapidMmPerMin speed of G0, which no feed exceeds
 * @param accelerationMmPerS2 of each axis
 * @param corneringMm allowed deviation at corners, which sets the speed through them
 * @param zErrorMm plus or minus, of Z
 */
public record Motion(
    double rapidMmPerMin, double accelerationMmPerS2, double corneringMm, double zErrorMm) {

  /** A small router. */
  public static final Motion USUAL = new Motion(4000, 300, 0.02, 0.03);

  /** Checks that speeds are positive, deviations not negative. */
  public Motion {
    Check.positive("rapid", rapidMmPerMin);
    Check.positive("acceleration", accelerationMmPerS2);
    Check.notNegative("cornering", corneringMm);
    Check.notNegative("Z error", zErrorMm);
  }
}
