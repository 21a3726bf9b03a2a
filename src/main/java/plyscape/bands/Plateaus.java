package plyscape.bands;

import java.util.List;
import plyscape.grid.Grid;
import plyscape.terrain.Terrain;

/**
 * Elevations that are one but for rounding. Warping and smoothing leave a lake's level equal to
 * some 14 digits only; which ply it takes mustn't hang on the last of them.
 */
public final class Plateaus {

  /** Elevations that differ by less than this share of the relief are the same. */
  private static final double SAME = 1e-9;

  private Plateaus() {}

  /** By how much elevations of a terrain may differ and still be the same, metres. */
  static double toleranceM(Terrain terrain) {
    return SAME * (terrain.zmaxM() - terrain.zminM());
  }

  /** Makes runs of elevations that are the same equal to their lowest, in place. */
  static void level(double[] rising, double toleranceM) {
    double low = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < rising.length; i++) {
      if (rising[i] - low <= toleranceM) {
        rising[i] = low;
      } else {
        low = rising[i];
      }
    }
  }

  /**
   * The terrain with elevations that are a break's but for rounding on that break, so that they go
   * to the upper ply; the same terrain when there are none.
   */
  public static Terrain onBreaks(Terrain terrain, Bands bands) {
    double toleranceM = toleranceM(terrain);
    double[] values = terrain.elevationM().values();
    double[] out = null;
    for (int i = 0; i < values.length; i++) {
      double settled = settled(values[i], bands.breaksM(), toleranceM);
      if (settled != values[i]) {
        out = out == null ? values.clone() : out;
        out[i] = settled;
      }
    }
    return out == null ? terrain : terrain.with(new Grid(terrain.elevationM().frame(), out));
  }

  private static double settled(double value, List<Double> breaksM, double toleranceM) {
    for (int i = 0; i < breaksM.size(); i++) {
      double under = breaksM.get(i) - value;
      if (under <= 0) {
        return value; // the first break that isn't above it is its own lower one
      }
      if (under <= toleranceM) {
        return breaksM.get(i);
      }
    }
    return value;
  }
}
