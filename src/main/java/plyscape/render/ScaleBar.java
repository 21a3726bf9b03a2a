package plyscape.render;

import plyscape.text.Numbers;

/** A bar of a round length in mm, and the ground it stands for. */
final class ScaleBar {

  private ScaleBar() {}

  /** The longest of 1, 2, 5 times a power of ten that is at most a third of the width, mm. */
  static double lengthMm(double widthMm) {
    double most = widthMm / 3;
    double power = 1e-3;
    while (power * 10 <= most) {
      power *= 10;
    }
    return power * 5 <= most ? power * 5 : power * 2 <= most ? power * 2 : power;
  }

  /** Draws it with its left top corner at the given pixel. */
  static void draw(
      Canvas canvas, int x, int y, double pxPerMm, double widthMm, double groundPerMm) {
    double length = lengthMm(widthMm);
    int half = (int) Math.round(length / 2 * pxPerMm);
    int full = (int) Math.round(length * pxPerMm);
    canvas.fill(x, y, full, 9, Colours.INK);
    canvas.fill(x + half, y + 2, full - half - 2, 5, Colours.PAPER);
    String text =
        Numbers.trimmed(length, 3)
            + " mm on the panel = "
            + ground(length * groundPerMm)
            + " on the ground";
    canvas.text(x + full + 14, y + 10, 11, Colours.INK, text);
  }

  /** A ground distance in words: km from a kilometre on. */
  static String ground(double metres) {
    return metres >= 1000
        ? Numbers.fixed(metres / 1000, 2) + " km"
        : Numbers.fixed(metres, metres >= 10 ? 0 : 2) + " m";
  }
}
