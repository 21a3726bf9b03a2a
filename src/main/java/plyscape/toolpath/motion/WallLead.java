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
  private static final double[] SHARES = {0.35, 0.2};

  private static final double LEAST_MM = 0.15;
  private static final int PARTS = 10;

  /** Whether the open end may lie at a place. */
  interface Open {
    boolean at(double x, double y);
  }

  /**
   * How leads are laid.
   *
   * @param way where the cutter may go
   * @param left whether the pocket lies left of the path, as it does in climb direction
   * @param stepoverMm the cutter's
   */
  record Site(Clearway way, boolean left, double stepoverMm) {}

  /**
   * From cleared ground onto a path, or null where there is no room.
   *
   * @param path where and how it goes on
   * @param open where the open end may lie
   */
  static WallLead on(Site site, Heading path, Open open) {
    return find(site, path, open, -1);
  }

  /** Off a path onto cleared ground, or null where there is no room. */
  static WallLead off(Site site, Heading path) {
    return find(site, path, site.way()::clear, 1);
  }

  private static WallLead find(Site site, Heading path, Open open, int ahead) {
    double x = path.x();
    double y = path.y();
    double nx = site.left() ? -path.uy() : path.uy();
    double ny = site.left() ? path.ux() : -path.ux();
    for (double share : SHARES) {
      double r = share * site.stepoverMm();
      if (r < LEAST_MM) {
        break;
      }
      double endX = x + r * (nx + ahead * path.ux());
      double endY = y + r * (ny + ahead * path.uy());
      if (!open.at(endX, endY)) {
        continue;
      }
      double[][] points = new double[PARTS + 1][];
      for (int i = 0; i <= PARTS; i++) {
        double a = Math.PI / 2 * i / PARTS;
        double along = ahead * r * Math.sin(a);
        double out = r * (1 - Math.cos(a));
        points[i] =
            new double[] {x + along * path.ux() + out * nx, y + along * path.uy() + out * ny};
      }
      if (site.way().free(points)) {
        return new WallLead(endX, endY, x + r * nx, y + r * ny, !site.left());
      }
    }
    return null;
  }

  /** The arc from the path to the open end. */
  Biarc.Arc arc() {
    return new Biarc.Arc(x, y, centreX, centreY, clockwise);
  }

  /** The arc from the open end to a place on the path. */
  Biarc.Arc reversedTo(double toX, double toY) {
    return new Biarc.Arc(toX, toY, centreX, centreY, clockwise);
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
