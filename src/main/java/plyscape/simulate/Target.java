package plyscape.simulate;

/**
 * Where one ply should show and how deep that is cut. The arrays are not changed.
 *
 * @param depthMm target depth, positive down
 * @param rings outlines in panel mm, each x0, y0, x1, y1, ..., closed by its first point whether
 *     that is repeated or not; holes and islands by the even-odd rule
 * @param face depths inside, where they aren't all the target depth; else null
 * @param slackMm how much higher wood may stay, mm, as at the tabs of an outline
 * @param level depth by place on a bent panel, where it doesn't go with the plies; else null
 */
public record Target(
    int plyNumber,
    double depthMm,
    double[][] rings,
    SculptedDepth face,
    double slackMm,
    BentPanel.Level level) {

  /** A target of which no part may stay higher. */
  public Target(int plyNumber, double depthMm, double[][] rings, SculptedDepth face) {
    this(plyNumber, depthMm, rings, face, 0, null);
  }

  /** A target at one depth. */
  public Target(int plyNumber, double depthMm, double[][] rings) {
    this(plyNumber, depthMm, rings, null);
  }

  /** Checks the depth and that each ring is pairs. */
  public Target {
    if (!(depthMm >= 0) || !(slackMm >= 0)) {
      throw new IllegalArgumentException("a target depth must not be negative: " + depthMm);
    }
    for (double[] ring : rings) {
      if (ring.length % 2 != 0) {
        throw new IllegalArgumentException(
            "a ring of " + ring.length + " numbers: x and y go in pairs");
      }
    }
  }

  /** Wanted depth at a place inside, mm. */
  double depthAt(double x, double y) {
    return face == null ? depthMm : face.depthMm(x, y);
  }

  /**
   * Depth at which a depth of the flat plan lies inside, at a place.
   *
   * @param bent how the panel lies, or null for one that is flat and the same everywhere
   */
  double lyingMm(BentPanel bent, double x, double y, double flatMm) {
    if (bent == null) {
      return flatMm;
    }
    return level == null
        ? bent.belowMm(x, y, flatMm)
        : bent.faceMm(x, y) + Math.max(0, level.depthMm(x, y) + flatMm - level.flatMm());
  }

  /** Shallowest wanted depth, mm: down to here it is cut by flat cutters. */
  double roughMm() {
    return face == null ? depthMm : face.upperMm();
  }

  /** How far above the wanted depth counts as matched, mm. */
  double allowedMm() {
    return Comparison.DEPTH_MM + slackMm + (face == null ? 0 : face.cuspMm());
  }
}
