package plyscape.toolpath.motion;

/**
 * Two arcs that lead smoothly from one direction at a point to another direction at another point;
 * panel mm. Both halves have equal tangent lengths. Source: the usual construction of a biarc (K.
 * Bolton, "Biarc curves", 1975), derived anew.
 *
 * @param middleX where the arcs meet
 * @param middleY the same
 * @param firstX centre of the first arc; not a number when it is straight
 * @param firstY the same
 * @param secondX centre of the second
 * @param secondY the same
 * @param firstClockwise sense of the first
 * @param secondClockwise sense of the second
 * @param radiusMm the smaller radius
 * @param lengthMm of both together
 */
record Biarc(
    double middleX,
    double middleY,
    double firstX,
    double firstY,
    double secondX,
    double secondY,
    boolean firstClockwise,
    boolean secondClockwise,
    double radiusMm,
    double lengthMm) {

  /**
   * The biarc from (ax, ay) in unit direction (ux, uy) to (bx, by) in unit direction (vx, vy), or
   * null if there is none.
   */
  static Biarc between(
      double ax, double ay, double ux, double uy, double bx, double by, double vx, double vy) {
    double dx = bx - ax;
    double dy = by - ay;
    double square = dx * dx + dy * dy;
    double same = ux * vx + uy * vy;
    double along = dx * (ux + vx) + dy * (uy + vy);
    double tangent;
    if (1 - same < 1e-9) {
      if (along <= 1e-9) {
        return null;
      }
      tangent = square / (2 * along);
    } else {
      double a = 2 * (1 - same);
      tangent = (-along + Math.sqrt(along * along + a * square)) / a;
    }
    double mx = (ax + tangent * ux + bx - tangent * vx) / 2;
    double my = (ay + tangent * uy + by - tangent * vy) / 2;
    double[] first = arc(ax, ay, ux, uy, mx, my);
    double[] second = arc(bx, by, -vx, -vy, mx, my);
    if (first == null || second == null) {
      return null;
    }
    return new Biarc(
        mx,
        my,
        first[0],
        first[1],
        second[0],
        second[1],
        first[2] < 0,
        second[2] > 0,
        Math.min(Math.abs(first[2]), Math.abs(second[2])),
        first[3] + second[3]);
  }

  /**
   * Centre, signed radius (over 0 when the centre is on the left) and length of the arc from P in a
   * direction to Q.
   */
  private static double[] arc(double px, double py, double ux, double uy, double qx, double qy) {
    double dx = qx - px;
    double dy = qy - py;
    double chord = dx * dx + dy * dy;
    if (chord < 1e-12) {
      return null;
    }
    double across = -uy * dx + ux * dy;
    double along = ux * dx + uy * dy;
    double angle = 2 * Math.atan2(Math.abs(across), along);
    if (Math.abs(across) < 1e-6 * Math.sqrt(chord)) {
      return along < 0
          ? null
          : new double[] {Double.NaN, Double.NaN, Double.POSITIVE_INFINITY, Math.sqrt(chord)};
    }
    double radius = chord / (2 * across);
    return new double[] {px - uy * radius, py + ux * radius, radius, Math.abs(radius) * angle};
  }
}
