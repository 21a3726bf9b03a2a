package plyscape.terrain.raster;

import java.io.IOException;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Bilinear values of a raster at free positions, reading only the cells that are needed. Beyond the
 * outermost cell centres the value of the edge is held. A position in a void cell is void; next to
 * voids the weights of the others are made up to one.
 */
public final class BilinearSampler {

  /** Positions that a thread takes at once. */
  private static final int EACH = 1 << 14;

  private BilinearSampler() {}

  /**
   * The values.
   *
   * @param at raster column and row of each position, pairs, in cells from the outer corner; a NaN
   *     column for none. It is changed.
   */
  public static double[] sample(Raster raster, double[] at) throws IOException {
    int c0 = Integer.MAX_VALUE;
    int r0 = Integer.MAX_VALUE;
    int c1 = 0;
    int r1 = 0;
    for (int i = 0; i < at.length; i += 2) {
      if (Double.isNaN(at[i])) {
        continue;
      }
      at[i] = hold(at[i] - 0.5, raster.columns() - 1);
      at[i + 1] = hold(at[i + 1] - 0.5, raster.rows() - 1);
      c0 = Math.min(c0, (int) Math.floor(at[i]));
      c1 = Math.max(c1, (int) Math.ceil(at[i]));
      r0 = Math.min(r0, (int) Math.floor(at[i + 1]));
      r1 = Math.max(r1, (int) Math.ceil(at[i + 1]));
    }
    double[] out = new double[at.length / 2];
    if (c0 > c1) {
      Arrays.fill(out, Double.NaN);
      return out;
    }
    int wide = c1 - c0 + 1;
    int high = r1 - r0 + 1;
    double[] source = raster.read(c0, r0, wide, high);
    int left = c0;
    int top = r0;
    IntStream.range(0, (out.length + EACH - 1) / EACH)
        .parallel()
        .forEach(
            part -> {
              for (int i = part * EACH; i < Math.min((part + 1) * EACH, out.length); i++) {
                out[i] =
                    Double.isNaN(at[2 * i])
                        ? Double.NaN
                        : value(source, wide, high, at[2 * i] - left, at[2 * i + 1] - top);
              }
            });
    return out;
  }

  private static double hold(double value, int max) {
    return value > 0 ? Math.min(value, max) : 0;
  }

  private static double value(double[] source, int wide, int high, double u, double v) {
    int c = (int) u;
    int r = (int) v;
    double fx = u - c;
    double fy = v - r;
    int c1 = Math.min(c + 1, wide - 1);
    int r1 = Math.min(r + 1, high - 1);
    double north = source[r * wide + c] * (1 - fx) + source[r * wide + c1] * fx;
    double south = source[r1 * wide + c] * (1 - fx) + source[r1 * wide + c1] * fx;
    double all = north * (1 - fy) + south * fy;
    if (!Double.isNaN(all)) {
      return all;
    }
    int nearest = (fy < 0.5 ? r : r1) * wide + (fx < 0.5 ? c : c1);
    if (Double.isNaN(source[nearest])) {
      return Double.NaN;
    }
    double sum = 0;
    double weights = 0;
    for (int k = 0; k < 4; k++) {
      double weight = ((k & 1) == 0 ? 1 - fx : fx) * ((k & 2) == 0 ? 1 - fy : fy);
      double value = source[((k & 2) == 0 ? r : r1) * wide + ((k & 1) == 0 ? c : c1)];
      if (!Double.isNaN(value)) {
        sum += weight * value;
        weights += weight;
      }
    }
    return sum / weights;
  }
}
