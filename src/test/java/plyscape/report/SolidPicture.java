package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.HashSet;
import java.util.Set;

/** What a picture of the solid, as a browser draws it, shows. */
final class SolidPicture {

  private SolidPicture() {}

  /** How many colours are in it, of every fifth pixel. */
  static int tones(BufferedImage picture) {
    Set<Integer> tones = new HashSet<>();
    for (int y = 0; y < picture.getHeight(); y += 5) {
      for (int x = 0; x < picture.getWidth(); x += 5) {
        tones.add(picture.getRGB(x, y));
      }
    }
    return tones.size();
  }

  /** The drawing leaves a rim of paper on all sides, and fills most of one direction. */
  static void assertFits(BufferedImage picture) {
    int w = picture.getWidth();
    int h = picture.getHeight();
    int paper = picture.getRGB(4, 4);
    int left = w;
    int right = -1;
    int top = h;
    int bottom = -1;
    for (int y = 2; y < h - 2; y++) {
      for (int x = 2; x < w - 2; x++) {
        if (picture.getRGB(x, y) != paper) {
          left = Math.min(left, x);
          right = Math.max(right, x);
          top = Math.min(top, y);
          bottom = Math.max(bottom, y);
        }
      }
    }
    String where = left + ".." + right + " of " + w + ", " + top + ".." + bottom + " of " + h;
    assertTrue(left > 6 && right < w - 7 && top > 6 && bottom < h - 7, where);
    assertTrue(right - left > 0.85 * w || bottom - top > 0.85 * h, where);
  }
}
