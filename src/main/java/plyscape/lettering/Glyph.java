package plyscape.lettering;

import java.util.ArrayList;
import java.util.List;

/**
 * A letter of strokes. Units: a capital is {@link StrokeAlphabet#CAP_UNITS} high, the baseline is
 * at 0, Y up.
 *
 * @param strokes polylines as x, y, x, y ...; never changed
 * @param advance how far to move on for the next letter
 * @param known whether the alphabet has it; otherwise it is a box
 */
public record Glyph(List<double[]> strokes, double advance, boolean known) {

  /** Room between two letters. */
  static final double GAP = 1.5;

  /** An accent may stand out so far over its letter. */
  private static final double OVERHANG = 0.4;

  /** Keeps its own list. */
  public Glyph {
    strokes = List.copyOf(strokes);
  }

  /** A letter that is as wide as its strokes. */
  static Glyph of(List<double[]> strokes) {
    return new Glyph(strokes, extent(strokes, 0)[1] + GAP, true);
  }

  /** The same letter with more strokes; what overhangs moves it and the next letter apart. */
  Glyph with(List<double[]> more) {
    double left = Math.min(0, extent(more, 0)[0] + OVERHANG);
    double right = Math.max(0, extent(more, 0)[1] - OVERHANG - (advance - GAP));
    List<double[]> all = new ArrayList<>();
    for (List<double[]> some : List.of(strokes, more)) {
      for (double[] stroke : some) {
        double[] moved = stroke.clone();
        for (int i = 0; i < moved.length; i += 2) {
          moved[i] -= left;
        }
        all.add(moved);
      }
    }
    return new Glyph(all, advance - left + right, known);
  }

  /** Least and greatest X (axis 0) or Y (axis 1). */
  double[] extent(int axis) {
    return extent(strokes, axis);
  }

  private static double[] extent(List<double[]> strokes, int axis) {
    double[] out = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (double[] stroke : strokes) {
      for (int i = axis; i < stroke.length; i += 2) {
        out[0] = Math.min(out[0], stroke[i]);
        out[1] = Math.max(out[1], stroke[i]);
      }
    }
    return out;
  }
}
