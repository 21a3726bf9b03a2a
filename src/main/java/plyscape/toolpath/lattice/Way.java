package plyscape.toolpath.lattice;

/** A straight way from A to B, panel mm. Changed in place for speed, so not for several threads. */
final class Way {

  private double ax;
  private double ay;
  private double dx;
  private double dy;
  private double inverse;
  private double lengthMm;

  /** Takes the ends. */
  void set(double fromX, double fromY, double toX, double toY) {
    ax = fromX;
    ay = fromY;
    dx = toX - fromX;
    dy = toY - fromY;
    double squared = dx * dx + dy * dy;
    inverse = squared > 1e-18 ? 1 / squared : 0;
    lengthMm = Math.sqrt(squared);
  }

  /** How far beyond its end a place lies along the way, mm; negative before the end. */
  double beyond(double x, double y) {
    return lengthMm == 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / lengthMm - lengthMm;
  }

  /** How far before its start a place lies along the way, mm; infinite if the way has no length. */
  double before(double x, double y) {
    return lengthMm == 0 ? Double.POSITIVE_INFINITY : ((ax - x) * dx + (ay - y) * dy) / lengthMm;
  }

  /** Square of the distance of a place, mm2. */
  double squaredTo(double x, double y) {
    double ex = x - ax;
    double ey = y - ay;
    double t = (ex * dx + ey * dy) * inverse;
    t = t < 0 ? 0 : t < 1 ? t : 1;
    double px = ex - t * dx;
    double py = ey - t * dy;
    return px * px + py * py;
  }
}
