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
  private double dx;
  private double dy;
  private double lengthSquared;
  private double rim;

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
    dx = bx - ax;
    dy = by - ay;
    lengthSquared = dx * dx + dy * dy;
    rim = radius * Math.sqrt(lengthSquared);
  }

  /** Lowest Y. */
  double bottom() {
    return Math.min(ay, by) - radius;
  }

  /** Highest Y. */
  double top() {
    return Math.max(ay, by) + radius;
  }

  /**
   * Puts the chord at a height into {@link #low} and {@link #high}, that of the disk at A into
   * {@link #startLow} and {@link #startHigh}; false when there is none.
   */
  boolean chord(double y) {
    low = Double.POSITIVE_INFINITY;
    high = Double.NEGATIVE_INFINITY;
    disk(ax, ay, y);
    startLow = low;
    startHigh = high;
    disk(bx, by, y);
    if (lengthSquared > 1e-18) {
      band(y - ay);
    }
    return low <= high;
  }

  private void disk(double cx, double cy, double y) {
    double h = y - cy;
    double rest = radius * radius - h * h;
    if (rest >= 0) {
      double half = Math.sqrt(rest);
      low = Math.min(low, cx - half);
      high = Math.max(high, cx + half);
    }
  }

  /**
   * The part between the two disks: 0 <= (p-a).d <= d.d and |(p-a) x d| <= r |d|, for a fixed
   * height v over A.
   */
  private void band(double v) {
    double from = Double.NEGATIVE_INFINITY;
    double to = Double.POSITIVE_INFINITY;
    if (Math.abs(dx) > 1e-12) {
      double p = -v * dy / dx;
      double q = (lengthSquared - v * dy) / dx;
      from = Math.max(from, Math.min(p, q));
      to = Math.min(to, Math.max(p, q));
    } else if (v * dy < 0 || v * dy > lengthSquared) {
      return;
    }
    if (Math.abs(dy) > 1e-12) {
      double p = (v * dx - rim) / dy;
      double q = (v * dx + rim) / dy;
      from = Math.max(from, Math.min(p, q));
      to = Math.min(to, Math.max(p, q));
    } else if (Math.abs(v * dx) > rim) {
      return;
    }
    if (from <= to) {
      low = Math.min(low, ax + from);
      high = Math.max(high, ax + to);
    }
  }
}
