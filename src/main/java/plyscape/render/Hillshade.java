package plyscape.render;

/**
 * Light on a height field by the usual formula with slopes after Horn (Proc. IEEE 69, 1981): {@code
 * 255 (cos Z cos S + sin Z sin S cos(A - As))}, negative values 0. Sun in the north-west (315
 * degrees), 45 degrees high.
 */
final class Hillshade {

  /** What level ground gets: 255 cos 45. */
  static final double FLAT = 255 * Math.sqrt(0.5);

  private Hillshade() {}

  /**
   * Light at the middle of a 3 by 3 window given row by row from the north-west, cells {@code w}
   * wide, in the same unit as the heights. With the sun's vector (-1, 1, sqrt 2) / 2 (east, north,
   * up), the formula is the product with the surface normal.
   */
  static double light(
      double a, double b, double c, double d, double f, double g, double h, double i, double w) {
    double east = ((c + 2 * f + i) - (a + 2 * d + g)) / (8 * w);
    double south = ((g + 2 * h + i) - (a + 2 * b + c)) / (8 * w);
    // Normal (-east, south, 1): the ground rises to the south by `south`, so it falls to the north.
    double dot = (east + south + Math.sqrt(2)) / 2;
    return Math.max(255 * dot / Math.sqrt(1 + east * east + south * south), 0);
  }
}
