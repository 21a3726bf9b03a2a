package plyscape.render;

import java.util.Arrays;
import plyscape.lettering.Glyph;
import plyscape.lettering.StrokeAlphabet;

/**
 * An RGB picture to draw on, pixels from the top left, with smooth lines. Plain arithmetic on
 * doubles, so the same calls give the same pixels on every machine.
 */
final class Canvas {

  private final int width;
  private final int height;
  private final int[] rgb;

  Canvas(int width, int height, int background) {
    this.width = width;
    this.height = height;
    rgb = new int[Math.multiplyExact(width, height)];
    Arrays.fill(rgb, background);
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** The pixels, row by row from the top, 0xRRGGBB; not a copy. */
  int[] pixels() {
    return rgb;
  }

  /** Sets one pixel; outside the picture nothing happens. */
  void set(int x, int y, int colour) {
    if (x >= 0 && y >= 0 && x < width && y < height) {
      rgb[y * width + x] = colour;
    }
  }

  /** Fills the pixels of a rectangle given by its left top corner and size. */
  void fill(int x, int y, int w, int h, int colour) {
    for (int row = Math.max(y, 0); row < Math.min(y + h, height); row++) {
      int from = Math.min(Math.max(x, 0), width);
      int to = Math.max(Math.min(x + w, width), from);
      Arrays.fill(rgb, row * width + from, row * width + to, colour);
    }
  }

  /** Lays another picture over this one, its left top corner at the given pixel; it must fit. */
  void paste(Canvas other, int x, int y) {
    for (int row = 0; row < other.height; row++) {
      System.arraycopy(other.rgb, row * other.width, rgb, (y + row) * width + x, other.width);
    }
  }

  /** Outlines a rectangle with a line one pixel wide, just inside it. */
  void frame(int x, int y, int w, int h, int colour) {
    fill(x, y, w, 1, colour);
    fill(x, y + h - 1, w, 1, colour);
    fill(x, y, 1, h, colour);
    fill(x + w - 1, y, 1, h, colour);
  }

  /** Draws a line with round ends between points given in pixels (pixel centres at .5). */
  void line(double x0, double y0, double x1, double y1, double thickness, int colour) {
    double r = thickness / 2;
    int left = (int) Math.max(Math.floor(Math.min(x0, x1) - r - 1), 0);
    int right = (int) Math.min(Math.ceil(Math.max(x0, x1) + r + 1), width);
    int top = (int) Math.max(Math.floor(Math.min(y0, y1) - r - 1), 0);
    int bottom = (int) Math.min(Math.ceil(Math.max(y0, y1) + r + 1), height);
    double dx = x1 - x0;
    double dy = y1 - y0;
    double square = dx * dx + dy * dy;
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        double px = x + 0.5 - x0;
        double py = y + 0.5 - y0;
        double t = square == 0 ? 0 : Math.min(Math.max((px * dx + py * dy) / square, 0), 1);
        double ex = px - t * dx;
        double ey = py - t * dy;
        double cover = r + 0.5 - Math.sqrt(ex * ex + ey * ey);
        if (cover > 0) {
          int i = y * width + x;
          rgb[i] = Colours.mix(rgb[i], colour, Math.min(cover, 1));
        }
      }
    }
  }

  /**
   * Writes text with its baseline at {@code y} and capitals {@code capPx} high; gives the X where
   * it ends.
   */
  double text(double x, double y, double capPx, int colour, String text) {
    double unit = capPx / StrokeAlphabet.CAP_UNITS;
    double thickness = Math.max(capPx / 7.5, 1.15);
    double at = x;
    for (Glyph glyph : StrokeAlphabet.glyphs(text)) {
      for (double[] stroke : glyph.strokes()) {
        for (int i = 0; i + 3 < stroke.length; i += 2) {
          line(
              at + stroke[i] * unit,
              y - stroke[i + 1] * unit,
              at + stroke[i + 2] * unit,
              y - stroke[i + 3] * unit,
              thickness,
              colour);
        }
      }
      at += glyph.advance() * unit;
    }
    return at;
  }
}
