package plyscape.text;

/** Which ink reads better on a colour. */
public final class Contrast {

  /** At this luminance L black and white stand out alike: (L + 0.05)2 = 0.05 (1 + 0.05). */
  private static final double EVEN = 0.179;

  private Contrast() {}

  /**
   * Whether black reads better than white on 0xRRGGBB: by relative luminance and contrast as in
   * WCAG 2, gamma taken as 2.2.
   */
  public static boolean blackOn(int rgb) {
    return 0.2126 * light(rgb >> 16) + 0.7152 * light(rgb >> 8) + 0.0722 * light(rgb) > EVEN;
  }

  private static double light(int channel) {
    return Math.pow((channel & 255) / 255.0, 2.2);
  }
}
