package plyscape.gcode;

import java.util.Objects;
import java.util.function.DoubleBinaryOperator;

/**
 * Where the top face of a panel was before the first cut. Immutable.
 *
 * @param depth of it at x, y below the face of a flat panel, mm; negative where it stands higher
 * @param highestDepthMm of its highest place, at most 0
 * @param roomMm how far rapids keep off it
 */
public record UncutFace(DoubleBinaryOperator depth, double highestDepthMm, double roomMm) {

  /** Flat, and no reason to keep off it. */
  static final UncutFace FLAT = new UncutFace((x, y) -> 0, 0, 0);

  /** Checks signs. */
  public UncutFace {
    Objects.requireNonNull(depth);
    if (!(highestDepthMm <= 0) || !(roomMm >= 0)) {
      throw new IllegalArgumentException("a face at " + highestDepthMm + ", room " + roomMm);
    }
  }

  /** Depth of the face at a place, mm. */
  double depthMm(double x, double y) {
    return depth.applyAsDouble(x, y);
  }
}
