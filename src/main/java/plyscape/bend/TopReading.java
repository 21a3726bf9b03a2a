package plyscape.bend;

/**
 * One probed height. Immutable.
 *
 * @param x panel mm
 * @param y panel mm
 * @param z height as probed, mm, positive up
 * @param line of its file, from 1, for messages
 */
public record TopReading(double x, double y, double z, int line) {

  /** Checks that all are numbers. */
  public TopReading {
    if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(z)) {
      throw new IllegalArgumentException("reading " + x + " " + y + " " + z);
    }
  }
}
