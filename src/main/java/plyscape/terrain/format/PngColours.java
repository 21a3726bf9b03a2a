package plyscape.terrain.format;

import java.util.Arrays;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.job.TerrainOptions.Encoding;

/**
 * Turns the samples of a PNG into elevations. The two encodings of elevations in red, green and
 * blue are the ones that public elevation tiles use: {@code 256 R + G + B / 256 - 32768} and {@code
 * -10000 + 0.1 (65536 R + 256 G + B)} metres; the lowest value of either (all three 0) is void.
 */
final class PngColours {

  /**
   * Mean step between neighbours, metres, up to which a decoded picture is believed to be ground.
   */
  private static final double BELIEVABLE_STEP_M = 150;

  private PngColours() {}

  /**
   * Elevations, NaN for void.
   *
   * @param bands grey, grey and alpha, red green blue, or these and alpha
   * @param bits of a sample
   */
  static double[] elevations(
      double[][] bands, int bits, Encoding encoding, int columns, Place place, Warnings warnings) {
    if (bands.length <= 2) {
      if (encoding == Encoding.RGB_256 || encoding == Encoding.RGB_TENTH) {
        throw new InputFault(
            place, "it is grey, without colours to decode", "leave terrain.encoding out");
      }
      return bands[0];
    }
    boolean grey = Arrays.equals(bands[0], bands[1]) && Arrays.equals(bands[0], bands[2]);
    if (encoding == Encoding.GREY || (encoding == Encoding.AUTO && grey)) {
      warnings.add(
          "png-colour",
          "a colour PNG is read as grey"
              + (grey ? "" : " (by brightness)")
              + "; if its colours encode elevations, set terrain.encoding: rgb-256 or"
              + " rgb-tenth",
          place.file());
      return grey ? bands[0] : brightness(bands);
    }
    if (bits != 8) {
      throw new InputFault(
          place,
          "a colour PNG of " + bits + " bits a sample",
          "elevation encodings have 8 bits; or set terrain.encoding: grey");
    }
    return encoding == Encoding.AUTO
        ? guessed(bands, columns, place, warnings)
        : decoded(bands, encoding);
  }

  private static double[] guessed(double[][] bands, int columns, Place place, Warnings warnings) {
    double[] by256 = decoded(bands, Encoding.RGB_256);
    double[] byTenths = decoded(bands, Encoding.RGB_TENTH);
    boolean first = believable(by256, columns);
    boolean second = believable(byTenths, columns);
    if (first == second) {
      throw new InputFault(
          place,
          "a colour PNG that isn't clearly in an elevation encoding",
          "set terrain.encoding: rgb-256, rgb-tenth or grey");
    }
    warnings.add(
        "png-colour",
        "a colour PNG, read in the encoding that it looks like; set terrain.encoding: "
            + (first ? "rgb-256" : "rgb-tenth")
            + " to make sure",
        place.file());
    return first ? by256 : byTenths;
  }

  private static double[] decoded(double[][] bands, Encoding encoding) {
    double[] out = new double[bands[0].length];
    for (int i = 0; i < out.length; i++) {
      double r = bands[0][i];
      double g = bands[1][i];
      double b = bands[2][i];
      if (r == 0 && g == 0 && b == 0) {
        out[i] = Double.NaN;
      } else if (encoding == Encoding.RGB_256) {
        out[i] = 256 * r + g + b / 256 - 32768;
      } else {
        // One rounding only: a tenth has no exact double.
        out[i] = (65536 * r + 256 * g + b - 100000) / 10;
      }
    }
    return out;
  }

  /** Whether neighbours are near each other and all lie where ground on Earth does. */
  private static boolean believable(double[] values, int columns) {
    double steps = 0;
    long count = 0;
    for (int i = 0; i < values.length; i++) {
      if (values[i] < -11500 || values[i] > 9000) {
        return false;
      }
      if (i % columns > 0 && !Double.isNaN(values[i] + values[i - 1])) {
        steps += Math.abs(values[i] - values[i - 1]);
        count++;
      }
    }
    return count > 0 && steps / count < BELIEVABLE_STEP_M;
  }

  /** Brightness of a colour, ITU-R BT.601 weights. */
  private static double[] brightness(double[][] bands) {
    double[] out = new double[bands[0].length];
    for (int i = 0; i < out.length; i++) {
      out[i] = 0.299 * bands[0][i] + 0.587 * bands[1][i] + 0.114 * bands[2][i];
    }
    return out;
  }
}
