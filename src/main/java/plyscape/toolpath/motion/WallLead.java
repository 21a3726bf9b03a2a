package plyscape.toolpath.motion;

/**
 * A quarter circle onto a wall's path or off it, tangent to it, so that the cutter never stands
 * still on the finished wall. Of the radii tried the largest that has room is taken.
 *
 * @param x where the open end lies, mm
 * @param y the same
 * @param centreX of the circle
 * @param centreY the same
 * @param clockwise which way round
 */
record WallLead(double x, double y, double centreX, double centreY, boolean clockwise) {

  /** Radii, as shares of the stepover. */
  private static final double[] SHARES = {1, 0.6, 0.35};

  private static final double LEAST_MM = 0.15;
  private static final int PARTS = 10;

  /** Whether the open end may lie at a place. */
  interface Open {
    boolean at(double x, double y);
  }

  /**
   * From cleared ground onto the path at a point, or null where there is no room.
   *
   * @param open where the open end may lie
   * @param left whether the pocket lies left of the path, as it does in climb direction
   * @param tx direction of the path there, of length 1
   */
  static WallLead on(
      Clearway way,
      Open open,
      boolean left,
      double stepoverMm,
      double x,
      double y,
      double tx,
      double ty) {
    return find(way, open, left, stepoverMm, x, y, tx, ty, -1);
  }

  /** Off the path at a point onto cleared ground, or null where there is no room. */
  static WallLead off(
      Clearway way, boolean left, double stepoverMm, double x, double y, double tx, double ty) {
    return find(way, way::clear, left, stepoverMm, x, y, tx, ty, 1);
  }

  private static WallLead find(
      Clearway way,
      Open open,
      boolean left,
      double stepoverMm,
      double x,
      double y,
      double tx,
      double ty,
      int ahead) {
    double nx = left ? -ty : ty;
    double ny = left ? tx : -tx;
    for (double share : SHARES) {
      double r = share * stepoverMm;
      if (r < LEAST_MM) {
        break;
      }
      double endX = x + r * (nx + ahead * tx);
      double endY = y + r * (ny + ahead * ty);
      if (!open.at(endX, endY)) {
        continue;
      }
      double[][] points = new double[PARTS + 1][];
      for (int i = 0; i <= PARTS; i++) {
        double a = Math.PI / 2 * i / PARTS;
        double along = ahead * r * Math.sin(a);
        double out = r * (1 - Math.cos(a));
        points[i] = new double[] {x + along * tx + out * nx, y + along * ty + out * ny};
      }
      if (way.free(points)) {
        return new WallLead(endX, endY, x + r * nx, y + r * ny, !left);
      }
    }
    return null;
  }

  /** The way from the path to the open end, in short straight parts. */
  double[][] points(double fromX, double fromY) {
    double ax = fromX - centreX;
    double ay = fromY - centreY;
    double bx = x - centreX;
    double by = y - centreY;
    double[][] points = new double[PARTS + 1][];
    for (int i = 0; i <= PARTS; i++) {
      double a = Math.PI / 2 * i / PARTS;
      points[i] =
          new double[] {
            centreX + ax * Math.cos(a) + bx * Math.sin(a),
            centreY + ay * Math.cos(a) + by * Math.sin(a)
          };
    }
    return points;
  }
}
