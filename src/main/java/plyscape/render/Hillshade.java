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
   * Light at the middle of a 3 by 3 window, from the {@link #edge}s of the window, cells {@code w}
   * wide, in the same unit as the heights. With the sun's vector (-1, 1, sqrt 2) / 2 (east, north,
   * up), the formula is the product with the surface normal.
   */
  static double light(double east, double west, double south, double north, double w) {
    double riseEast = (east - west) / (8 * w);
    double riseSouth = (south - north) / (8 * w);
    // Normal (-riseEast, riseSouth, 1): what rises to the south falls to the north.
    double dot = (riseEast + riseSouth + Math.sqrt(2)) / 2;
    return Math.max(255 * dot / Math.sqrt(1 + riseEast * riseEast + riseSouth * riseSouth), 0);
  }

  /** Heights along one edge of the window, the middle one twice. */
  static double edge(double corner, double middle, double otherCorner) {
    return corner + 2 * middle + otherCorner;
  }
}
