package plyscape.layup;

import plyscape.text.Numbers;

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

  /** Panels are pressed larger than they are carved, by this much at most on a side. */
  static final double WASTE_MM = 50;

  /** Whether it lies on a panel of that size or in the waste around it. */
  public boolean on(double widthMm, double heightMm) {
    return xMm >= -WASTE_MM
        && yMm >= -WASTE_MM
        && xMm <= widthMm + WASTE_MM
        && yMm <= heightMm + WASTE_MM;
  }

  /** {@code (x, y)}. */
  @Override
  public String toString() {
    return "(" + Numbers.trimmed(xMm, 2) + ", " + Numbers.trimmed(yMm, 2) + ")";
  }

  /** The centre of a panel of that size. */
  public static PanelPoint centreOf(double widthMm, double heightMm) {
    return new PanelPoint(widthMm / 2, heightMm / 2);
  }
}
