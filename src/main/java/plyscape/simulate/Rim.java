package plyscape.simulate;

/**
 * Where a cutter may meet wood of any height: within the 0.05 mm along a wall that an earlier one
 * may have left (src/contract.md, section 9).
 */
interface Rim {

  /** Without walls nothing is a rim. */
  Rim NONE = (x, y, depthMm) -> false;

  /** Whether a wall that stands above a depth is within 0.05 mm of a place. */
  boolean isAt(double x, double y, double depthMm);
}
