package plyscape.render;

import plyscape.text.Contrast;

/** Arithmetic on 0xRRGGBB colours. */
final class Colours {

  static final int INK = 0x26231f;
  static final int FAINT = 0x8a847a;
  static final int PAPER = 0xfbfaf7;

  private Colours() {}

  /** {@code a} moved towards {@code b} by a share from 0 to 1. */
  static int mix(int a, int b, double share) {
    return channel(a >> 16, b >> 16, share) << 16
        | channel(a >> 8, b >> 8, share) << 8
        | channel(a, b, share);
  }

  /**
   * Every channel times a factor of 0 or more; above 1 the colour moves towards white by the same
   * rule.
   */
  static int light(int colour, double factor) {
    return factor <= 1 ? mix(0, colour, factor) : mix(colour, 0xffffff, Math.min(factor - 1, 1));
  }

  /** Dark ink or white, whichever reads better on the colour. */
  static int inkOn(int colour) {
    return Contrast.blackOn(colour) ? INK : 0xffffff;
  }

  private static int channel(int a, int b, double share) {
    return (int) ((a & 255) + ((b & 255) - (a & 255)) * share + 0.5);
  }
}
