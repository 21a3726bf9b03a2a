package plyscape.render;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageInputStream;

/** A written picture made small: each pixel is the mean of those that it stands for. */
public final class Thumbnail {

  private Thumbnail() {}

  /**
   * The small picture as a PNG; one that is small enough keeps its size.
   *
   * @param png a picture's file
   * @param longestPx its longer side, at most
   * @throws IOException if it isn't a picture
   */
  public static byte[] png(byte[] png, int longestPx) throws IOException {
    // Closes the stream itself; in memory, so that no file is made on the way.
    BufferedImage read =
        ImageIO.read(new MemoryCacheImageInputStream(new ByteArrayInputStream(png)));
    if (read == null) {
      throw new IOException("not a picture");
    }
    BufferedImage whole = plain(read);
    double scale = Math.min(1, longestPx / (double) Math.max(whole.getWidth(), whole.getHeight()));
    int width = Math.max(1, (int) Math.round(scale * whole.getWidth()));
    int height = Math.max(1, (int) Math.round(scale * whole.getHeight()));
    Canvas small = new Canvas(width, height, 0xffffff);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        small.set(x, y, mean(whole, x, y, small));
      }
    }
    return Png.write(small, 0);
  }

  /** The picture with one number a pixel: asking any other kind for colours takes far longer. */
  private static BufferedImage plain(BufferedImage read) {
    BufferedImage whole =
        new BufferedImage(read.getWidth(), read.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = whole.createGraphics();
    pen.drawImage(read, 0, 0, null);
    pen.dispose();
    return whole;
  }

  private static int mean(BufferedImage whole, int x, int y, Canvas small) {
    int[] pixels = ((DataBufferInt) whole.getRaster().getDataBuffer()).getData();
    int left = x * whole.getWidth() / small.width();
    int right = Math.max(left + 1, (x + 1) * whole.getWidth() / small.width());
    int top = y * whole.getHeight() / small.height();
    int bottom = Math.max(top + 1, (y + 1) * whole.getHeight() / small.height());
    long red = 0;
    long green = 0;
    long blue = 0;
    for (int row = top; row < bottom; row++) {
      for (int column = left; column < right; column++) {
        int rgb = pixels[row * whole.getWidth() + column];
        red += rgb >> 16 & 255;
        green += rgb >> 8 & 255;
        blue += rgb & 255;
      }
    }
    long count = (long) (right - left) * (bottom - top);
    return rounded(red, count) << 16 | rounded(green, count) << 8 | rounded(blue, count);
  }

  private static int rounded(long sum, long count) {
    return (int) ((sum + count / 2) / count);
  }
}
