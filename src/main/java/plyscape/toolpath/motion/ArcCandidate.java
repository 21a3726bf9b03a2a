package plyscape.toolpath.motion;

/**
 * Whether one line or one arc through two vertices of a polyline can stand for the stretch between
 * them. The arcs through two points are a family with one number, the bulge b: the tangent of a
 * quarter of the turn, positive when it turns left, 0 for the line. Each vertex and each middle of
 * a segment allows a range of bulges; what is left of all ranges is tried.
 *
 * <p>In the frame with the middle of the chord at the origin and its ends at (-h, 0) and (h, 0),
 * how far a point (u, v) is off to the right of the arc is F = (b (u2 + v2 - h2) - v h (1 - b2)) /
 * (h (1 + b2)), but for terms of F2 / 2R, which the final check takes in.
 */
final class ArcCandidate {

  /** Smaller arcs say nothing that short lines don't, mm. */
  private static final double LEAST_RADIUS_MM = 0.1;

  /** Larger ones lose precision on controls that count in float, mm. */
  private static final double GREATEST_RADIUS_MM = 500;

  /** Turn by at most 170 degrees, well off the half circle, which some controls read badly. */
  private static final double GREATEST_BULGE = Math.tan(Math.toRadians(170) / 4);

  private final double[] x;
  private final double[] y;
  private final double leftMm;
  private final double rightMm;

  private double low;
  private double high;

  /** Bulge found by the last call of {@link #fits}. */
  double bulge;

  /** Radius of it, mm. */
  double radius;

  /** Centre X of it. */
  double centreX;

  /** Centre Y of it. */
  double centreY;

  /**
   * For stretches of a polyline.
   *
   * @param leftMm how far at most what stands for it may lie to its left
   * @param rightMm the same to its right
   */
  ArcCandidate(double[] x, double[] y, double leftMm, double rightMm) {
    this.x = x;
    this.y = y;
    this.leftMm = leftMm;
    this.rightMm = rightMm;
  }

  /**
   * Tries the stretch from one vertex to another; if it fits, {@link #bulge} and the others are
   * set.
   */
  boolean fits(int from, int to) {
    double chordX = x[to] - x[from];
    double chordY = y[to] - y[from];
    double half = Math.sqrt(chordX * chordX + chordY * chordY) / 2;
    if (to == from + 1) {
      bulge = 0;
      return true;
    }
    if (half < 1e-6) {
      return false;
    }
    return range(from, to, half) && choose(half) && holds(from, to, half);
  }

  private boolean range(int from, int to, double half) {
    double cos = (x[to] - x[from]) / (2 * half);
    double sin = (y[to] - y[from]) / (2 * half);
    double middleX = (x[from] + x[to]) / 2;
    double middleY = (y[from] + y[to]) / 2;
    double slack = Math.max(leftMm, rightMm);
    low = -GREATEST_BULGE;
    high = GREATEST_BULGE;
    double u = -half;
    double v = 0;
    double furthest = u;
    for (int k = from + 1; k <= to; k++) {
      double nextU = (x[k] - middleX) * cos + (y[k] - middleY) * sin;
      double nextV = (y[k] - middleY) * cos - (x[k] - middleX) * sin;
      if (nextU < furthest - slack
          || !narrow((u + nextU) / 2, (v + nextV) / 2, half)
          || !narrow(nextU, nextV, half)) {
        return false;
      }
      u = nextU;
      v = nextV;
      furthest = Math.max(furthest, u);
    }
    return true;
  }

  /** Takes off the range what this point forbids; false when nothing is left. */
  private boolean narrow(double u, double v, double half) {
    double w = u * u + v * v - half * half;
    if (w >= 0) {
      // Beside or beyond an end: no bulge brings the arc nearer, the final check decides.
      return -v <= leftMm && v <= rightMm;
    }
    double least = bulgeAt(v, leftMm, w, half);
    double most = bulgeAt(v, -rightMm, w, half);
    // A comparison with NaN is false: then the point is nearer to the chord's ends than any arc can
    // miss it.
    if (least > low) {
      low = least;
    }
    if (most < high) {
      high = most;
    }
    return low <= high;
  }

  /**
   * The bulge at which the point is {@code right} off to the right, by the quadratic for b from F =
   * right.
   */
  private static double bulgeAt(double v, double right, double w, double half) {
    return -2
        * half
        * (v + right)
        / (Math.sqrt(w * w + 4 * half * half * (v * v - right * right)) - w);
  }

  private boolean choose(double half) {
    if (low <= 0 && high >= 0) {
      bulge = 0;
      return true;
    }
    double b = (low + high) / 2;
    if (radiusOf(b, half) > GREATEST_RADIUS_MM) {
      // On the far side of the range the radius may still do.
      b = Math.abs(low) > Math.abs(high) ? low + 0.05 * (high - low) : high - 0.05 * (high - low);
    }
    double r = radiusOf(b, half);
    if (r < LEAST_RADIUS_MM || r > GREATEST_RADIUS_MM) {
      return false;
    }
    bulge = b;
    return true;
  }

  private static double radiusOf(double b, double half) {
    return half * (1 + b * b) / (2 * Math.abs(b));
  }

  /**
   * Measures vertices, and on each segment the point nearest to the centre, without approximation.
   */
  private boolean holds(int from, int to, double half) {
    if (bulge == 0) {
      return true;
    }
    radius = radiusOf(bulge, half);
    double along = (1 - bulge * bulge) / (4 * bulge);
    centreX = (x[from] + x[to]) / 2 - (y[to] - y[from]) * along;
    centreY = (y[from] + y[to]) / 2 + (x[to] - x[from]) * along;
    double outward = (bulge > 0 ? leftMm : rightMm) + 1e-9;
    double inward = (bulge > 0 ? rightMm : leftMm) + 1e-9;
    double most = (radius + outward) * (radius + outward);
    double least = radius > inward ? (radius - inward) * (radius - inward) : 0;
    for (int k = from; k < to; k++) {
      double ax = x[k] - centreX;
      double ay = y[k] - centreY;
      double dx = x[k + 1] - x[k];
      double dy = y[k + 1] - y[k];
      double squared = ax * ax + ay * ay;
      double step = dx * dx + dy * dy;
      double toFoot = -(ax * dx + ay * dy);
      double nearest = toFoot > 0 && toFoot < step ? squared - toFoot * toFoot / step : squared;
      if (squared > most || nearest < least) {
        return false;
      }
    }
    return true;
  }
}
