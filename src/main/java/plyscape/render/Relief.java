package plyscape.render;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Light and cast shadow on the finished, stepped panel: 1 is a level face in the sun. The steps are
 * softened over about half a millimetre before {@link Hillshade} sees them, so that a wall shows as
 * an edge of light or shade, and stretched upwards.
 */
final class Relief {

  /**
   * Heights are stretched for the light only, as a few millimetres on a wide panel would hardly
   * show.
   */
  private static final double STRETCH = 1.6;

  private static final double SOFT_MM = 0.25;
  private static final float SHADOW = 0.74f;

  /** Rows turned at once, so that what is written lies together. */
  private static final int BAND = 32;

  private Relief() {}

  /**
   * Light of every pixel. Rows are independent of one another, so the outcome doesn't depend on how
   * many threads share them.
   *
   * @param height of every pixel, mm, row by row from the north
   * @param columns pixels in a row
   * @param pixelMm side of a pixel
   */
  static float[] light(float[] height, int columns, double pixelMm) {
    return light(height, soften(height, columns, pixelMm), columns, pixelMm);
  }

  /** Heights with their steps softened. */
  static float[] soften(float[] height, int columns, double pixelMm) {
    int radius = Math.max((int) Math.round(SOFT_MM / pixelMm), 1);
    int rows = height.length / columns;
    float[] soft = height;
    for (int pass = 0; pass < 2; pass++) {
      float[] turned = turned(blurRows(soft, columns, radius), columns);
      soft = turned(blurRows(turned, rows, radius), rows);
    }
    return soft;
  }

  /** The same light from heights that are softened already. */
  static float[] light(float[] height, float[] smooth, int columns, double pixelMm) {
    int rows = height.length / columns;
    float[] light = new float[height.length];
    double cell = pixelMm / STRETCH;
    IntStream.range(0, rows)
        .parallel()
        .forEach(y -> lightRow(smooth, light, columns, rows, y, cell));
    castShadow(height, light, columns, pixelMm);
    return light;
  }

  private static void lightRow(
      float[] soft, float[] light, int columns, int rows, int y, double cell) {
    int n = Math.max(y - 1, 0) * columns;
    int m = y * columns;
    int s = Math.min(y + 1, rows - 1) * columns;
    for (int x = 0; x < columns; x++) {
      int w = Math.max(x - 1, 0);
      int e = Math.min(x + 1, columns - 1);
      float here = soft[m + x];
      if (soft[m + w] == here
          && soft[m + e] == here
          && soft[n + x] == here
          && soft[s + x] == here
          && soft[n + w] == here
          && soft[n + e] == here
          && soft[s + w] == here
          && soft[s + e] == here) {
        light[m + x] = 1; // level, as most of a panel is
        continue;
      }
      double shade =
          Hillshade.light(
              Hillshade.edge(soft[n + e], soft[m + e], soft[s + e]),
              Hillshade.edge(soft[n + w], soft[m + w], soft[s + w]),
              Hillshade.edge(soft[s + w], soft[s + x], soft[s + e]),
              Hillshade.edge(soft[n + w], soft[n + x], soft[n + e]),
              cell);
      light[m + x] = (float) (0.42 + 0.58 * shade / Hillshade.FLAT);
    }
  }

  /**
   * The sun stands in the north-west at 45 degrees: going one pixel south-east, a shadow's edge
   * sinks by the pixel's diagonal.
   */
  private static void castShadow(float[] height, float[] light, int columns, double pixelMm) {
    float fall = (float) (pixelMm * Math.sqrt(2));
    float[] edge = height.clone();
    for (int y = 1; y < height.length / columns; y++) {
      for (int x = 1; x < columns; x++) {
        int i = y * columns + x;
        float shadow = edge[i - columns - 1] - fall;
        if (shadow > height[i] + 1e-4f) {
          edge[i] = shadow;
          light[i] *= SHADOW;
        }
      }
    }
  }

  /** Rows for columns. */
  private static float[] turned(float[] in, int columns) {
    float[] out = new float[in.length];
    int rows = in.length / columns;
    int bands = (rows + BAND - 1) / BAND;
    IntStream.range(0, bands)
        .parallel()
        .forEach(
            band -> {
              int end = Math.min(rows, (band + 1) * BAND);
              for (int x = 0; x < columns; x++) {
                for (int y = band * BAND; y < end; y++) {
                  out[x * rows + y] = in[y * columns + x];
                }
              }
            });
    return out;
  }

  /** Mean of 2 radius + 1 pixels along a row; the edge's value is held beyond it. */
  private static float[] blurRows(float[] in, int columns, int radius) {
    float[] out = new float[in.length];
    IntStream.range(0, in.length / columns)
        .parallel()
        .forEach(y -> blurRow(in, out, y * columns, (y + 1) * columns - 1, radius));
    return out;
  }

  /** Most of a panel is level: the mean of so many like heights is worked out once a run. */
  private static void blurRow(float[] in, float[] out, int first, int last, int radius) {
    float share = 1f / (2 * radius + 1);
    int next;
    for (int from = first; from <= last; from = next) {
      float height = in[from];
      next = from + 1;
      while (next <= last && in[next] == height) {
        next++;
      }
      int level = from == first ? first : from + radius;
      int slope = next > last ? next : next - radius;
      if (level < slope) {
        float mean = sum(in, from, from, from - radius, from + radius) * share;
        Arrays.fill(out, level, slope, mean);
      } else {
        level = next;
        slope = next;
      }
      for (int x = from; x < level; x++) {
        out[x] = sum(in, first, last, x - radius, x + radius) * share;
      }
      for (int x = slope; x < next; x++) {
        out[x] = sum(in, first, last, x - radius, x + radius) * share;
      }
    }
  }

  /** Sum from a place to another; before the first and behind the last, those stand for all. */
  private static float sum(float[] in, int first, int last, int from, int to) {
    float sum = 0;
    if (from >= first && to <= last) {
      for (int k = from; k <= to; k++) {
        sum += in[k];
      }
    } else {
      for (int k = from; k <= to; k++) {
        sum += in[Math.min(Math.max(k, first), last)];
      }
    }
    return sum;
  }
}
