package plyscape.toolpath.motion;

/**
 * Two arcs that lead smoothly from one heading to another; panel mm. Both halves have equal tangent
 * lengths. Source: the usual construction of a biarc (K. Bolton, "Biarc curves", 1975), derived
 * anew.
 *
 * @param first the first arc
 * @param second the second
 * @param radiusMm the smaller radius
 * @param lengthMm of both together
 */
record Biarc(Arc first, Arc second, double radiusMm, double lengthMm) {

  /**
   * One of them.
   *
   * @param x where it ends
   * @param y the same
   * @param centreX its centre; not a number when it is straight
   * @param centreY the same
   * @param clockwise its sense
   */
  record Arc(double x, double y, double centreX, double centreY, boolean clockwise) {

    boolean straight() {
      return Double.isNaN(centreX);
    }

    double radiusMm() {
      return Math.hypot(x - centreX, y - centreY);
    }

    /**
     * Writes points along it from the one at a position on, evenly; the last is its end.
     *
     * @param points holds where it begins at {@code from}
     * @param count points to write
     */
    void along(double[][] points, int from, int count) {
      double sx = points[from][0];
      double sy = points[from][1];
      double start = Math.atan2(sy - centreY, sx - centreX);
      double sweep = Math.atan2(y - centreY, x - centreX) - start;
      if (clockwise && sweep > 0) {
        sweep -= 2 * Math.PI;
      } else if (!clockwise && sweep < 0) {
        sweep += 2 * Math.PI;
      }
      double radius = Math.hypot(sx - centreX, sy - centreY);
      for (int i = 1; i < count; i++) {
        double t = (double) i / count;
        points[from + i] =
            straight()
                ? new double[] {sx + t * (x - sx), sy + t * (y - sy)}
                : new double[] {
                  centreX + radius * Math.cos(start + t * sweep),
                  centreY + radius * Math.sin(start + t * sweep)
                };
      }
      points[from + count] = new double[] {x, y};
    }
  }

  /** The biarc from one heading to another, or null if there is none. */
  static Biarc between(Heading a, Heading b) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double square = dx * dx + dy * dy;
    double same = a.ux() * b.ux() + a.uy() * b.uy();
    double along = dx * (a.ux() + b.ux()) + dy * (a.uy() + b.uy());
    double tangent;
    if (1 - same < 1e-9) {
      if (along <= 1e-9) {
        return null;
      }
      tangent = square / (2 * along);
    } else {
      double twice = 2 * (1 - same);
      tangent = (-along + Math.sqrt(along * along + twice * square)) / twice;
    }
    double mx = (a.x() + tangent * a.ux() + b.x() - tangent * b.ux()) / 2;
    double my = (a.y() + tangent * a.uy() + b.y() - tangent * b.uy()) / 2;
    double[] first = arc(a.x(), a.y(), a.ux(), a.uy(), mx, my);
    double[] second = arc(b.x(), b.y(), -b.ux(), -b.uy(), mx, my);
    if (first == null || second == null) {
      return null;
    }
    return new Biarc(
        new Arc(mx, my, first[0], first[1], first[2] < 0),
        new Arc(b.x(), b.y(), second[0], second[1], second[2] > 0),
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

  /**
   * Points along it from a place to its end.
   *
   * @param stepMm about how far apart
   */
  double[][] points(double fromX, double fromY, double stepMm) {
    int one = parts(fromX, fromY, stepMm);
    int two = parts(second.x(), second.y(), stepMm);
    double[][] points = new double[one + two + 1][];
    points[0] = new double[] {fromX, fromY};
    first.along(points, 0, one);
    second.along(points, one, two);
    return points;
  }

  /** Parts of the half between the middle and one end. */
  private int parts(double endX, double endY, double stepMm) {
    return Math.max(
        1, (int) Math.ceil(Math.hypot(first.x() - endX, first.y() - endY) * 1.6 / stepMm));
  }
}
