package plyscape.layup.calibration;

import plyscape.layup.PanelPoint;

/**
 * What all readings of one ply's bottom at one place come to. Immutable.
 *
 * @param at place, or null where it isn't known
 * @param depthMm their weighted mean
 * @param toleranceMm plus or minus of it, without what a test cut's readings share
 * @param cut whether they share such an error
 * @param readings how many
 */
record ReadBottom(
    PanelPoint at, int plyNumber, double depthMm, double toleranceMm, boolean cut, int readings) {

  /** The mean of two independent ones of the same bottom, weighted. */
  ReadBottom and(ReadBottom other) {
    double a = 1 / (toleranceMm * toleranceMm);
    double b = 1 / (other.toleranceMm * other.toleranceMm);
    return new ReadBottom(
        at,
        plyNumber,
        (a * depthMm + b * other.depthMm) / (a + b),
        1 / Math.sqrt(a + b),
        cut || other.cut,
        readings + other.readings);
  }
}
