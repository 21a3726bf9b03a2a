package plyscape.bend;

import java.util.function.DoubleBinaryOperator;

/**
 * A depth of the flat plan and what it means over the panel, where it falls evenly but for a bow.
 * Immutable.
 *
 * @param flatMm depth of the flat plan
 * @param here depth below the top face at the panel's lower left corner, mm
 * @param acrossX its change a mm of X
 * @param acrossY its change a mm of Y
 * @param outwards its change a mm squared of X and of Y, 0 where it falls evenly
 */
public record DepthPlane(
    double flatMm, double here, double acrossX, double acrossY, double outwards) {

  /** How far apart a curve is looked at, mm. */
  private static final double BOW_MM = 100;

  /** Checks that it can be asked for. */
  public DepthPlane {
    if (!(flatMm > 0) || !Double.isFinite(here + acrossX + acrossY + outwards)) {
      throw new IllegalArgumentException("a plane at " + flatMm + " mm: " + here);
    }
  }

  /** The same, lower or higher everywhere, for as much another depth of the flat plan. */
  public DepthPlane lower(double byMm) {
    return new DepthPlane(flatMm + byMm, here + byMm, acrossX, acrossY, outwards);
  }

  /**
   * Through depths that are known at places.
   *
   * @param depth at x, y, mm
   * @param bows whether it curves from the panel's centre outwards
   * @param less taken off the depth everywhere
   */
  public static DepthPlane through(
      double flatMm, DoubleBinaryOperator depth, boolean bows, double less) {
    double zero = depth.applyAsDouble(0, 0);
    double alongX = depth.applyAsDouble(1, 0) - zero;
    double alongY = depth.applyAsDouble(0, 1) - zero;
    double curve = 0;
    if (bows) {
      double far = BOW_MM;
      double half = depth.applyAsDouble(far, 0);
      curve = (depth.applyAsDouble(2 * far, 0) - 2 * half + zero) / (2 * far * far);
      alongX = (half - zero) / far - curve * far;
      alongY = (depth.applyAsDouble(0, far) - zero) / far - curve * far;
    }
    return new DepthPlane(flatMm, zero - less, alongX, alongY, curve);
  }
}
