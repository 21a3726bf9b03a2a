package plyscape.bands;

import java.util.ArrayList;
import java.util.List;

/**
 * Breaks of {@code bands: equal-area}: every ply takes the same number of cells, as nearly as cells
 * of one value allow. A break lies halfway between the two neighbouring values that it parts; where
 * it would fall within a run of equal values, at the nearer end of the run (the lower one on a
 * tie), so that the run stays whole.
 */
final class QuantileBreaks {

  private QuantileBreaks() {}

  /**
   * Falling breaks, metres, one fewer than the classes; neighbours may be equal when there are too
   * few values.
   *
   * @param rising sorted values, at least one
   */
  static List<Double> breaks(double[] rising, int classes) {
    List<Double> out = new ArrayList<>();
    for (int i = 1; i < classes; i++) {
      double below = (double) rising.length * (classes - i) / classes;
      out.add(at(rising, (int) Math.rint(below)));
    }
    return out;
  }

  /**
   * The elevation that parts the {@code below} lowest cells from the others, or the nearest that
   * parts any.
   */
  private static double at(double[] rising, int below) {
    int cut = Math.min(Math.max(below, 0), rising.length);
    int low = cut;
    while (low > 0 && low < rising.length && rising[low - 1] == rising[low]) {
      low--;
    }
    int high = cut;
    while (high > 0 && high < rising.length && rising[high - 1] == rising[high]) {
      high++;
    }
    // An end of all values parts nothing; take the other end of the run if that does.
    boolean takeLow = high == rising.length || (low > 0 && cut - low <= high - cut);
    int chosen = takeLow ? low : high;
    if (chosen == 0) {
      return rising[0];
    }
    return chosen == rising.length
        ? Math.nextUp(rising[rising.length - 1])
        : rising[chosen - 1] + (rising[chosen] - rising[chosen - 1]) / 2;
  }
}
