package plyscape.layup;

/**
 * How unevenly a press may squeeze a panel, as plus or minus (3 sigma). Immutable.
 *
 * @param taperTolerance of how much thicker it grows to one side, a share per 100 mm
 * @param bowTolerance of how much thicker it grows from its centre outwards, a share per (100 mm)
 *     squared
 */
public record PressShape(double taperTolerance, double bowTolerance) {

  /** Checks the signs. */
  public PressShape {
    if (!(taperTolerance >= 0) || !(bowTolerance >= 0)) {
      throw new IllegalArgumentException("taper +-" + taperTolerance + ", bow +-" + bowTolerance);
    }
  }
}
