package plyscape.simulate;

import plyscape.grid.Grid;

/**
 * Depths inside a target that isn't flat, as plain figures: elevations of a relief from {@code
 * highM} down to {@code lowM} go evenly to depths from {@code upperMm} to {@code lowerMm}, and stay
 * at the ends beyond. Immutable; the grid is shared.
 *
 * @param relief elevations on the panel, m
 * @param highM elevation at the shallow end
 * @param lowM elevation at the deep end
 * @param upperMm shallowest, positive down
 * @param lowerMm deepest
 * @param cuspMm how high ridges of the finishing may stand
 */
public record SculptedDepth(
    Grid relief, double highM, double lowM, double upperMm, double lowerMm, double cuspMm) {

  /** Checks the order. */
  public SculptedDepth {
    if (!(upperMm >= 0 && lowerMm >= upperMm) || !(highM >= lowM) || !(cuspMm >= 0)) {
      throw new IllegalArgumentException(
          "no face: " + highM + " to " + lowM + " m, " + upperMm + " to " + lowerMm + " mm");
    }
  }

  /** Depth at a place, mm. */
  public double depthMm(double x, double y) {
    if (upperMm == lowerMm || highM == lowM) {
      return upperMm;
    }
    double z = Math.max(lowM, Math.min(highM, relief.bilinear(x, y)));
    return lowerMm - (z - lowM) / (highM - lowM) * (lowerMm - upperMm);
  }
}
