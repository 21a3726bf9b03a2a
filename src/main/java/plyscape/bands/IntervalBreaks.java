package plyscape.bands;

import java.util.ArrayList;
import java.util.List;

/** Breaks of {@code bands: equal-interval}: every ply takes the same share of the relief. */
final class IntervalBreaks {

  private IntervalBreaks() {}

  /** Falling breaks, metres, one fewer than the classes. */
  static List<Double> breaks(double zminM, double zmaxM, int classes) {
    List<Double> out = new ArrayList<>();
    for (int i = 1; i < classes; i++) {
      out.add(zmaxM - (zmaxM - zminM) * i / classes);
    }
    return out;
  }
}
