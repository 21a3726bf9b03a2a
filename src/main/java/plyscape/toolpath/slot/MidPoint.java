package plyscape.toolpath.slot;

/**
 * A place as far from two walls, panel mm: a point of the pocket's middle line.
 *
 * @param x X
 * @param y Y
 * @param clearMm distance from both walls
 * @param firstX foot on one wall, X
 * @param firstY the same, Y
 * @param secondX foot on the other wall, X
 * @param secondY the same, Y
 */
record MidPoint(
    double x,
    double y,
    double clearMm,
    double firstX,
    double firstY,
    double secondX,
    double secondY) {

  /** Cosine of the angle between the ways to both feet: -1 between parallel walls. */
  double spread() {
    double ax = firstX - x;
    double ay = firstY - y;
    double bx = secondX - x;
    double by = secondY - y;
    double product = Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by));
    return product < 1e-12 ? 1 : (ax * bx + ay * by) / product;
  }
}
