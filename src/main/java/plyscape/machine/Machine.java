package plyscape.machine;

/**
 * The router's limits. Immutable.
 *
 * @param travelXMm span that the X axis may use
 * @param travelYMm span of Y
 * @param travelZMm span of Z
 * @param rapidMmPerMin speed of G0
 * @param accelerationMmPerS2 of each axis
 * @param corneringMm allowed deviation at corners, which sets the speed through them
 * @param safeHeightMm height over the top face for moves between far places
 * @param zErrorMm plus or minus, of Z
 * @param zero where X0 Y0 of the program is on the panel
 * @param zeroZ where Z0 of the program is
 */
public record Machine(
    double travelXMm,
    double travelYMm,
    double travelZMm,
    double rapidMmPerMin,
    double accelerationMmPerS2,
    double corneringMm,
    double safeHeightMm,
    double zErrorMm,
    Zero zero,
    ZeroZ zeroZ) {

  /** Place of the program's X0 Y0 on the panel. */
  public enum Zero {
    LOWER_LEFT,
    LOWER_RIGHT,
    UPPER_LEFT,
    UPPER_RIGHT,
    CENTRE
  }

  /** Place of the program's Z0: the panel's top face, or the table under it. */
  public enum ZeroZ {
    TOP,
    BOTTOM
  }
}
