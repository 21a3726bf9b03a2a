package plyscape.bend;

/**
 * A depth of the flat plan and what it means over the panel, where it falls evenly. Immutable.
 *
 * @param flatMm depth of the flat plan
 * @param here depth below the top face at the panel's lower left corner, mm
 * @param acrossX its change a mm of X
 * @param acrossY its change a mm of Y
 */
public record DepthPlane(double flatMm, double here, double acrossX, double acrossY) {

  /** Checks that it can be asked for. */
  public DepthPlane {
    if (!(flatMm > 0) || !Double.isFinite(here + acrossX + acrossY)) {
      throw new IllegalArgumentException("a plane at " + flatMm + " mm: " + here);
    }
  }

  /** Depth at a place, mm. */
  public double depthMm(double x, double y) {
    return here + acrossX * x + acrossY * y;
  }

  /** The same, lower or higher everywhere, for as much another depth of the flat plan. */
  public DepthPlane lower(double byMm) {
    return new DepthPlane(flatMm + byMm, here + byMm, acrossX, acrossY);
  }
}
