package plyscape.render;

import java.util.stream.IntStream;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;

/** The panel from above in ply colours with light and shadow, edge to edge, without legend. */
final class TopView {

  private TopView() {}

  /**
   * Draws it from a raster that has {@code finer} cells to a pixel in each direction; their mean
   * colour makes smooth edges, light is worked out by the pixel.
   */
  static Canvas draw(Landscape plan, PlyRaster raster, int finer) {
    float[] heights = new float[plan.depths().plies() + 1];
    int[] colours = new int[heights.length];
    colours[0] = plan.depths().top().ply().rgb();
    heights[0] = (float) -FinishedFace.depthMm(plan, 0);
    for (PlyDepth depth : plan.depths()) {
      heights[depth.ply().number()] = (float) -FinishedFace.depthMm(plan, depth.ply().number());
      colours[depth.ply().number()] = depth.ply().rgb();
    }
    int width = raster.columns() / finer;
    int height = raster.rows() / finer;
    float[] mean = new float[width * height];
    int[] flat = new int[mean.length];
    IntStream.range(0, height)
        .parallel()
        .forEach(y -> meanRow(raster, finer, y, width, heights, colours, mean, flat));
    float[] cells = FinishedFace.heights(plan, raster, 0, plan.job().panel().heightMm());
    if (cells != null) {
      IntStream.range(0, height)
          .parallel()
          .forEach(y -> meanHeights(cells, raster.columns(), finer, y, width, mean));
    }
    float[] light = Relief.light(mean, width, raster.cellMm() * finer);
    Canvas canvas = new Canvas(width, height, Colours.PAPER);
    int[] pixels = canvas.pixels();
    IntStream.range(0, height)
        .parallel()
        .forEach(
            y -> {
              for (int i = y * width; i < (y + 1) * width; i++) {
                pixels[i] = light[i] == 1f ? flat[i] : Colours.light(flat[i], light[i]);
              }
            });
    return canvas;
  }

  private static void meanHeights(
      float[] cells, int columns, int finer, int y, int width, float[] mean) {
    for (int x = 0; x < width; x++) {
      float sum = 0;
      for (int row = y * finer; row < (y + 1) * finer; row++) {
        for (int column = x * finer; column < (x + 1) * finer; column++) {
          sum += cells[row * columns + column];
        }
      }
      mean[y * width + x] = sum / (finer * finer);
    }
  }

  private static void meanRow(
      PlyRaster raster,
      int finer,
      int y,
      int width,
      float[] heights,
      int[] colours,
      float[] mean,
      int[] flat) {
    short[] plies = raster.plies();
    for (int x = 0; x < width; x++) {
      int first = y * finer * raster.columns() + x * finer;
      int i = y * width + x;
      if (same(plies, first, raster.columns(), finer)) {
        mean[i] = heights[plies[first]];
        flat[i] = colours[plies[first]];
      } else {
        mix(plies, first, raster.columns(), finer, heights, colours, mean, flat, i);
      }
    }
  }

  private static boolean same(short[] plies, int first, int columns, int finer) {
    short ply = plies[first];
    for (int row = 0; row < finer; row++) {
      for (int k = first + row * columns; k < first + row * columns + finer; k++) {
        if (plies[k] != ply) {
          return false;
        }
      }
    }
    return true;
  }

  private static void mix(
      short[] plies,
      int first,
      int columns,
      int finer,
      float[] heights,
      int[] colours,
      float[] mean,
      int[] flat,
      int i) {
    int n = finer * finer;
    float sum = 0;
    int red = n / 2;
    int green = n / 2;
    int blue = n / 2;
    for (int k = 0; k < n; k++) {
      int ply = plies[first + k / finer * columns + k % finer];
      sum += heights[ply];
      red += colours[ply] >> 16 & 255;
      green += colours[ply] >> 8 & 255;
      blue += colours[ply] & 255;
    }
    mean[i] = sum / n;
    flat[i] = red / n << 16 | green / n << 8 | blue / n;
  }
}
