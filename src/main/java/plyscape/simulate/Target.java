package plyscape.simulate;

/**
 * Where one ply should show and how deep that is cut. The arrays are not changed.
 *
 * @param plyNumber the ply
 * @param depthMm target depth, positive down
 * @param rings outlines in panel mm, each x0, y0, x1, y1, ..., closed by its first point whether
 *     that is repeated or not; holes and islands by the even-odd rule
 */
public record Target(int plyNumber, double depthMm, double[][] rings) {

  /** Checks the depth and that each ring is pairs. */
  public Target {
    if (!(depthMm >= 0)) {
      throw new IllegalArgumentException("a target depth must not be negative: " + depthMm);
    }
    for (double[] ring : rings) {
      if (ring.length % 2 != 0) {
        throw new IllegalArgumentException(
            "a ring of " + ring.length + " numbers: x and y go in pairs");
      }
    }
  }
}
