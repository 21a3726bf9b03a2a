package plyscape.planar;

/**
 * The integer grid on which all outlines lie: 1 unit is 0.001 mm, so a panel of 2 m has coordinates
 * below 2^21 and cross products of differences are exact in 64 bits. Why a grid: the layers are
 * written with three decimals, and what is written must be the tiling itself, not a rounding of it.
 */
public final class GridUnits {

  /** Units in a millimetre. */
  public static final int PER_MM = 1000;

  private GridUnits() {}

  /** Nearest grid coordinate of a length in mm. */
  public static int of(double mm) {
    return (int) Math.round(mm * PER_MM);
  }

  /** The double nearest to the grid coordinate in mm: prints with three decimals at most. */
  public static double mm(int units) {
    return units / (double) PER_MM;
  }

  /** Square units in one mm2. */
  public static double perMm2() {
    return (double) PER_MM * PER_MM;
  }

  /**
   * Twice the signed area that the line from (x0, y0) to (x1, y1) sweeps about the origin, exact.
   */
  static long cross(int x0, int y0, int x1, int y1) {
    return (long) x0 * y1 - (long) x1 * y0;
  }

  /** Sign tells on which side of a to b the point c lies: positive is left. Exact. */
  static long turn(int ax, int ay, int bx, int by, int cx, int cy) {
    return (long) (bx - ax) * (cy - ay) - (long) (by - ay) * (cx - ax);
  }
}
