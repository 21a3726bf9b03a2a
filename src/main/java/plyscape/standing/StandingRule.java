package plyscape.standing;

/**
 * What standing wood has to be like. Immutable.
 *
 * @param leastWidthMm narrower fins and posts are weak, mm
 * @param slenderness greatest height over width; common practice, no source
 */
public record StandingRule(double leastWidthMm, double slenderness) {

  /** A fin that runs along the grain of the ply on top of it may be so much slenderer. */
  static final double ALONG_GRAIN = 1.5;

  /** Checks that both are positive. */
  public StandingRule {
    if (!(leastWidthMm >= 0) || !(slenderness > 0)) {
      throw new IllegalArgumentException(
          "no rule for standing wood: " + leastWidthMm + " mm, " + slenderness);
    }
  }

  /** Width under which a part of some height is weak, mm. */
  double neededMm(double heightMm, boolean alongGrain) {
    return Math.max(leastWidthMm, heightMm / (slenderness * (alongGrain ? ALONG_GRAIN : 1)));
  }
}
