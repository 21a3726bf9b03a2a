package plyscape.render;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;

/** The panel from above in ply colours with light and shadow, edge to edge, without legend. */
final class TopView {

  private final PlyRaster raster;

  /** Cells to a pixel in each direction. */
  private final int finer;

  private final int width;
  private final int height;

  /** Heights and colours by ply number; 0 is the border. */
  private final float[] heights;

  private final int[] colours;

  /** Means over each pixel. */
  private final float[] mean;

  private final int[] flat;

  private TopView(Landscape plan, PlyRaster raster, int finer) {
    this.raster = raster;
    this.finer = finer;
    heights = new float[plan.depths().plies() + 1];
    colours = new int[heights.length];
    colours[0] = plan.depths().top().ply().rgb();
    heights[0] = (float) -FinishedFace.depthMm(plan, 0);
    for (PlyDepth depth : plan.depths()) {
      heights[depth.ply().number()] = (float) -FinishedFace.depthMm(plan, depth.ply().number());
      colours[depth.ply().number()] = depth.ply().rgb();
    }
    width = raster.columns() / finer;
    height = raster.rows() / finer;
    mean = new float[width * height];
    flat = new int[mean.length];
  }

  /**
   * Draws it from a raster that has {@code finer} cells to a pixel in each direction; their mean
   * colour makes smooth edges, light is worked out by the pixel.
   */
  static Canvas draw(Landscape plan, PlyRaster raster, int finer) {
    TopView view = new TopView(plan, raster, finer);
    view.rows(view::meanRow);
    float[] cells = FinishedFace.heights(plan, raster, 0, plan.job().panel().heightMm());
    if (cells != null) {
      view.rows(y -> view.meanHeights(cells, y));
    }
    return view.lit();
  }

  private void rows(IntConsumer each) {
    IntStream.range(0, height).parallel().forEach(each);
  }

  private Canvas lit() {
    float[] light = Relief.light(mean, width, raster.cellMm() * finer);
    Canvas canvas = new Canvas(width, height, Colours.PAPER);
    int[] pixels = canvas.pixels();
    rows(
        y -> {
          for (int i = y * width; i < (y + 1) * width; i++) {
            pixels[i] = light[i] == 1f ? flat[i] : Colours.light(flat[i], light[i]);
          }
        });
    return canvas;
  }

  private void meanHeights(float[] cells, int y) {
    int side = finer;
    int columns = raster.columns();
    for (int x = 0; x < width; x++) {
      float sum = 0;
      for (int row = y * side; row < (y + 1) * side; row++) {
        for (int column = x * side; column < (x + 1) * side; column++) {
          sum += cells[row * columns + column];
        }
      }
      mean[y * width + x] = sum / (side * side);
    }
  }

  private void meanRow(int y) {
    short[] plies = raster.plies();
    int columns = raster.columns();
    for (int x = 0; x < width; x++) {
      int first = y * finer * columns + x * finer;
      int i = y * width + x;
      if (same(plies, first, columns, finer)) {
        mean[i] = heights[plies[first]];
        flat[i] = colours[plies[first]];
      } else {
        mix(plies, first, i);
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

  private void mix(short[] plies, int first, int pixel) {
    int n = finer * finer;
    float sum = 0;
    int red = n / 2;
    int green = n / 2;
    int blue = n / 2;
    for (int k = 0; k < n; k++) {
      int ply = plies[first + k / finer * raster.columns() + k % finer];
      sum += heights[ply];
      red += colours[ply] >> 16 & 255;
      green += colours[ply] >> 8 & 255;
      blue += colours[ply] & 255;
    }
    mean[pixel] = sum / n;
    flat[pixel] = red / n << 16 | green / n << 8 | blue / n;
  }
}
