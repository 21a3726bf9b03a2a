package plyscape.lettering;

import java.util.ArrayList;
import java.util.List;

/**
 * An accent: strokes about x = 0, y counted away from the letter. Immutable.
 *
 * @param above whether it stands over the letter or under it
 * @param strokes polylines as x, y, x, y ..., units; never changed
 */
record Mark(boolean above, List<double[]> strokes) {

  /** Between a letter and its accent. */
  private static final double ROOM = 0.7;

  /** The accent's strokes at a letter. */
  List<double[]> at(Glyph letter) {
    double[] x = letter.extent(0);
    double[] y = letter.extent(1);
    double centre = (x[0] + x[1]) / 2;
    List<double[]> out = new ArrayList<>();
    for (double[] stroke : strokes) {
      double[] placed = new double[stroke.length];
      for (int i = 0; i < stroke.length; i += 2) {
        placed[i] = centre + stroke[i];
        placed[i + 1] = above ? y[1] + ROOM + stroke[i + 1] : Math.min(0, y[0]) - stroke[i + 1];
      }
      out.add(placed);
    }
    return out;
  }
}
