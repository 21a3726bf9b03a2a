package plyscape.bands;

import java.util.ArrayList;
import java.util.List;

/**
 * Breaks of {@code bands: scale}: elevation is mapped linearly to depth, the top of the terrain to
 * the first listed ply's mid depth and its bottom to the last one's, and the ply with the nearest
 * mid depth wins. So ply i parts from i + 1 at the depth halfway between their mid depths; exact
 * but for rounding.
 */
final class ScaleBreaks {

  private ScaleBreaks() {}

  /**
   * Falling breaks, metres.
   *
   * @param midsMm rising mid-ply depths of the listed plies, two or more
   */
  static List<Double> breaks(double zminM, double zmaxM, double[] midsMm) {
    double first = midsMm[0];
    double span = midsMm[midsMm.length - 1] - first;
    List<Double> out = new ArrayList<>();
    for (int i = 0; i + 1 < midsMm.length; i++) {
      double depth = (midsMm[i] + midsMm[i + 1]) / 2;
      out.add(zmaxM - (depth - first) / span * (zmaxM - zminM));
    }
    return out;
  }
}
