package plyscape.render;

/**
 * Light and cast shadow on the finished, stepped panel: 1 is a level face in the sun. The steps are softened over about half a
 * millimetre before {@link Hillshade} sees them, so that a wall shows as an edge of light or shade, and stretched upwards.
 */
final class Relief {

  /** Heights are stretched for the light only, as a few millimetres on a wide panel would hardly show. */
  private static final double STRETCH = 1.6;

  private static final double SOFT_MM = 0.25;
  private static final float SHADOW = 0.74f;

  private Relief() {}

  /** Light of every cell of a raster; {@code depthMm} is the finished depth by ply number. */
  static float[] light(PlyRaster raster, double[] depthMm) {
    int columns = raster.columns();
    int rows = raster.rows();
    float[] height = new float[columns * rows];
    for (int i = 0; i < height.length; i++) {
      height[i] = (float) -depthMm[raster.plies()[i]];
    }
    float[] soft = height.clone();
    int radius = Math.max((int) Math.round(SOFT_MM / raster.cellMm()), 1);
    for (int pass = 0; pass < 2; pass++) {
      soft = blurRows(soft, columns, rows, radius);
      soft = blurColumns(soft, columns, rows, radius);
    }
    float[] light = new float[height.length];
    double cell = raster.cellMm() / STRETCH;
    for (int y = 0; y < rows; y++) {
      int n = Math.max(y - 1, 0) * columns;
      int m = y * columns;
      int s = Math.min(y + 1, rows - 1) * columns;
      for (int x = 0; x < columns; x++) {
        int w = Math.max(x - 1, 0);
        int e = Math.min(x + 1, columns - 1);
        double shade =
            Hillshade.light(
                soft[n + w], soft[n + x], soft[n + e], soft[m + w], soft[m + e], soft[s + w], soft[s + x], soft[s + e], cell);
        light[m + x] = (float) (0.42 + 0.58 * shade / Hillshade.FLAT);
      }
    }
    castShadow(height, light, columns, rows, raster.cellMm());
    return light;
  }

  /** The sun stands in the north-west at 45 degrees: going one cell south-east, a shadow's edge sinks by the cell's diagonal. */
  private static void castShadow(float[] height, float[] light, int columns, int rows, double cellMm) {
    float fall = (float) (cellMm * Math.sqrt(2));
    float[] edge = height.clone();
    for (int y = 1; y < rows; y++) {
      for (int x = 1; x < columns; x++) {
        int i = y * columns + x;
        float shadow = edge[i - columns - 1] - fall;
        if (shadow > height[i]) {
          edge[i] = shadow;
          light[i] *= SHADOW;
        }
      }
    }
  }

  private static float[] blurRows(float[] in, int columns, int rows, int radius) {
    float[] out = new float[in.length];
    for (int y = 0; y < rows; y++) {
      int at = y * columns;
      double sum = 0;
      for (int k = -radius; k <= radius; k++) {
        sum += in[at + clamp(k, columns)];
      }
      for (int x = 0; x < columns; x++) {
        out[at + x] = (float) (sum / (2 * radius + 1));
        sum += in[at + clamp(x + radius + 1, columns)] - in[at + clamp(x - radius, columns)];
      }
    }
    return out;
  }

  private static float[] blurColumns(float[] in, int columns, int rows, int radius) {
    float[] out = new float[in.length];
    double[] sum = new double[columns];
    for (int k = -radius; k <= radius; k++) {
      int at = clamp(k, rows) * columns;
      for (int x = 0; x < columns; x++) {
        sum[x] += in[at + x];
      }
    }
    for (int y = 0; y < rows; y++) {
      int add = clamp(y + radius + 1, rows) * columns;
      int drop = clamp(y - radius, rows) * columns;
      for (int x = 0; x < columns; x++) {
        out[y * columns + x] = (float) (sum[x] / (2 * radius + 1));
        sum[x] += in[add + x] - in[drop + x];
      }
    }
    return out;
  }

  private static int clamp(int i, int count) {
    return Math.min(Math.max(i, 0), count - 1);
  }
}
