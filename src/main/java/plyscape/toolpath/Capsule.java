package plyscape.toolpath;

/**
 * The area that a disk sweeps along a straight line, cut into horizontal chords: exact, panel mm.
 * Reused for speed, so not for several threads.
 */
final class Capsule {

  private double ax;
  private double ay;
  private double bx;
  private double by;
  private double radius;
  private double squared;

  // The band between the two disks at a height v over A: X from A between v * across and that plus
  // alongX, and between v * slope -+ aside.
  private boolean moves;
  private boolean level;
  private boolean upright;
  private double across;
  private double alongX;
  private double slope;
  private double aside;
  private double lowest;
  private double highest;

  /** Left end of the chord last asked for. */
  double low;

  /** Right end of the chord last asked for. */
  double high;

  /** Ends of the chord of the disk at A alone; no chord when the left one is farther right. */
  double startLow;

  double startHigh;

  /** Takes the line from A to B and the disk's radius, mm. */
  void set(double ax, double ay, double bx, double by, double radius) {
    this.ax = ax;
    this.ay = ay;
    this.bx = bx;
    this.by = by;
    this.radius = radius;
    squared = radius * radius;
    double dx = bx - ax;
    double dy = by - ay;
    double lengthSquared = dx * dx + dy * dy;
    moves = lengthSquared > 1e-18;
    if (!moves) {
      return;
    }
    double rim = radius * Math.sqrt(lengthSquared);
    upright = Math.abs(dx) <= 1e-12;
    level = Math.abs(dy) <= 1e-12;
    if (!upright) {
      across = -dy / dx;
      alongX = lengthSquared / dx;
    }
    if (!level) {
      slope = dx / dy;
      aside = Math.abs(rim / dy);
    }
    lowest = dy < 0 ? dy : 0;
    highest = dy < 0 ? 0 : dy;
  }

  /** Lowest Y. */
  double bottom() {
    return (ay < by ? ay : by) - radius;
  }

  /** Highest Y. */
  double top() {
    return (ay > by ? ay : by) + radius;
  }

  /**
   * Puts the chord at a height into {@link #low} and {@link #high}, that of the disk at A into
   * {@link #startLow} and {@link #startHigh}; false when there is none.
   */
  boolean chord(double y) {
    double v = y - ay;
    double rest = squared - v * v;
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    if (rest >= 0) {
      double half = Math.sqrt(rest);
      left = ax - half;
      right = ax + half;
    }
    startLow = left;
    startHigh = right;
    if (moves) {
      double h = y - by;
      rest = squared - h * h;
      if (rest >= 0) {
        double half = Math.sqrt(rest);
        left = bx - half < left ? bx - half : left;
        right = bx + half > right ? bx + half : right;
      }
      double from = Double.NEGATIVE_INFINITY;
      double to = Double.POSITIVE_INFINITY;
      if (!upright) {
        double p = v * across;
        double q = p + alongX;
        from = p < q ? p : q;
        to = p < q ? q : p;
      } else if (v < lowest || v > highest) {
        to = from;
      }
      if (!level) {
        double middle = v * slope;
        from = middle - aside > from ? middle - aside : from;
        to = middle + aside < to ? middle + aside : to;
      } else if (v > radius || v < -radius) {
        to = Double.NEGATIVE_INFINITY;
      }
      if (from <= to && to > Double.NEGATIVE_INFINITY) {
        left = ax + from < left ? ax + from : left;
        right = ax + to > right ? ax + to : right;
      }
    }
    low = left;
    high = right;
    return left <= right;
  }
}
