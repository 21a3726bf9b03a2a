package plyscape.region;

import plyscape.text.Template;

/**
 * What regions have to be like. Immutable.
 *
 * @param plyCount plies of the layup, at which {@code sink} stops
 * @param smallestToolMm diameter; what it can't reach goes to a neighbour; 0 to leave everything
 * @param minimumAreaMm2 regions smaller than this go to a neighbour
 * @param standing what becomes of weak standing wood; null to leave it without a look
 */
public record TilingRules(
    int plyCount, double smallestToolMm, double minimumAreaMm2, StandingCure standing) {

  /** Checks that all are sane. */
  public TilingRules {
    if (plyCount < 1 || !(smallestToolMm >= 0) || !(minimumAreaMm2 >= 0)) {
      throw new IllegalArgumentException(
          Template.fill(
              "no rules for a tiling: %s plies, %s mm, %s mm2",
              plyCount, smallestToolMm, minimumAreaMm2));
    }
  }
}
