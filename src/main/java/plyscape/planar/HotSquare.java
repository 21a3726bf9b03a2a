package plyscape.planar;

import java.math.BigInteger;

/**
 * The unit square around a grid point, to which all that passes through it is snapped: closed to
 * the west and south, open to the east and north. The squares of all grid points therefore tile the
 * plane: every place lies in exactly one, whose middle is where it is rounded to, and a line that
 * only touches a corner goes to one square of the four, whichever way it runs. All is exact. Plain
 * ints instead of objects, since a noding asks millions of times.
 */
final class HotSquare {

  private HotSquare() {}

  /**
   * The whole number nearest to length * part / whole, halves upwards, as the square is closed
   * below and open above: with the length of a segment along an axis, and the share of it at which
   * another crosses, the middle of the square that the crossing is in.
   */
  static int rounded(long length, long part, long whole) {
    double value = length * ((double) part / whole);
    double up = Math.floor(value + 0.5);
    if (Math.abs(value + 0.5 - Math.rint(value + 0.5)) > 1e-6) {
      return (int) up;
    }
    BigInteger numerator =
        BigInteger.valueOf(length)
            .multiply(BigInteger.valueOf(part))
            .shiftLeft(1)
            .add(BigInteger.valueOf(whole));
    BigInteger denominator = BigInteger.valueOf(whole).shiftLeft(1);
    if (denominator.signum() < 0) {
      numerator = numerator.negate();
      denominator = denominator.negate();
    }
    BigInteger[] parts = numerator.divideAndRemainder(denominator);
    return parts[1].signum() < 0 ? parts[0].intValue() - 1 : parts[0].intValue();
  }

  /**
   * Whether a segment meets the square around a grid point. Coordinates below 2^29.
   *
   * @param cx the square's middle
   * @param cy its y
   * @param x0 one end of the segment, not the same as the other
   * @param x1 the other end
   */
  static boolean meets(int cx, int cy, int x0, int y0, int x1, int y1) {
    // Doubled, so that the square's corners are whole too; the segment from west to east.
    boolean swap = x0 > x1;
    int px = 2 * (swap ? x1 : x0);
    int py = 2 * (swap ? y1 : y0);
    int qx = 2 * (swap ? x0 : x1);
    int qy = 2 * (swap ? y0 : y1);
    int west = 2 * cx - 1;
    int east = 2 * cx + 1;
    int south = 2 * cy - 1;
    int north = 2 * cy + 1;
    if (px >= east || qx < west || Math.min(py, qy) >= north || Math.max(py, qy) < south) {
      return false;
    }
    if (px == qx || py == qy) {
      return true;
    }
    // The line passes by when all four corners lie on one side of it; a corner on it is decided
    // apart.
    boolean rising = py < qy;
    long northWest = GridUnits.turn(px, py, qx, qy, west, north);
    if (northWest == 0) {
      return !rising;
    }
    long northEast = GridUnits.turn(px, py, qx, qy, east, north);
    if (northEast == 0) {
      return rising;
    }
    if (northWest > 0 != northEast > 0) {
      return true;
    }
    long southWest = GridUnits.turn(px, py, qx, qy, west, south);
    if (southWest == 0 || southWest > 0 != northWest > 0) {
      return true;
    }
    long southEast = GridUnits.turn(px, py, qx, qy, east, south);
    return southEast == 0 ? !rising : southEast > 0 != southWest > 0;
  }
}
