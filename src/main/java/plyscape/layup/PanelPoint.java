package plyscape.layup;

/**
 * A place on the panel. Immutable.
 *
 * @param xMm from the lower left corner, to the right
 * @param yMm from the lower left corner, up
 */
public record PanelPoint(double xMm, double yMm) {

  /** Checks that both are numbers. */
  public PanelPoint {
    if (!Double.isFinite(xMm) || !Double.isFinite(yMm)) {
      throw new IllegalArgumentException("place " + xMm + ", " + yMm);
    }
  }

  /** The centre of a panel of that size. */
  public static PanelPoint centreOf(double widthMm, double heightMm) {
    return new PanelPoint(widthMm / 2, heightMm / 2);
  }
}
