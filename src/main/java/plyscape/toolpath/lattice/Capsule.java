package plyscape.toolpath.lattice;

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
  private double startSquared;

  // The band between the two disks, 0 <= (p-a).d <= d.d and |(p-a) x d| <= r |d|, at a height v
  // over A: X from A between v * across and that plus alongX, and between v * slope -+ aside.
  private boolean moves;
  private boolean level;
  private boolean upright;
  private double across;
  private double alongX;
  private double slope;
  private double aside;
  private double lowest;
  private double highest;

  /**
   * Left and right ends of the chords last asked for, then those of the disk at A alone: four
   * numbers each. No chord when the left end is farther right.
   */
  double[] ends = new double[256];

  /** Takes the line from A to B and the disk's radius, mm. */
  void set(double ax, double ay, double bx, double by, double radius) {
    this.ax = ax;
    this.ay = ay;
    this.bx = bx;
    this.by = by;
    this.radius = radius;
    squared = radius * radius;
    startSquared = squared;
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

  /** Takes another radius for the disk at A alone, mm; none if not positive. */
  void setStart(double startRadius) {
    startSquared = startRadius > 0 ? startRadius * startRadius : -1;
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
   * Puts the chords of some rows into {@link #ends}. Everything is held in local variables: the
   * planner asks for these more than for anything else.
   *
   * @param minY of row 0, mm
   * @param stepMm between rows
   * @param first row
   * @param last row
   */
  void chords(double minY, double stepMm, int first, int last) {
    double[] out = room(last - first + 1);
    double x0 = ax;
    double y0 = ay;
    double x1 = bx;
    double y1 = by;
    double r2 = squared;
    double start2 = startSquared;
    boolean disk = !moves;
    boolean noBand = upright;
    boolean flat = level;
    double acrossV = across;
    double slopeV = slope;
    double asideX = aside;
    for (int j = first, at = 0; j <= last; j++, at += 4) {
      double y = minY + j * stepMm;
      double v = y - y0;
      double rest = r2 - v * v;
      double left = Double.POSITIVE_INFINITY;
      double right = Double.NEGATIVE_INFINITY;
      if (rest >= 0) {
        double half = Math.sqrt(rest);
        left = x0 - half;
        right = x0 + half;
      }
      out[at + 2] = left;
      out[at + 3] = right;
      if (start2 != r2) {
        rest = start2 - v * v;
        double half = rest >= 0 ? Math.sqrt(rest) : Double.NEGATIVE_INFINITY;
        out[at + 2] = x0 - half;
        out[at + 3] = x0 + half;
      }
      if (!disk) {
        double h = y - y1;
        rest = r2 - h * h;
        if (rest >= 0) {
          double half = Math.sqrt(rest);
          left = x1 - half < left ? x1 - half : left;
          right = x1 + half > right ? x1 + half : right;
        }
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        if (!noBand) {
          double p = v * acrossV;
          double q = p + alongX;
          from = p < q ? p : q;
          to = p < q ? q : p;
        } else if (v < lowest || v > highest) {
          to = from;
        }
        if (!flat) {
          double middle = v * slopeV;
          from = middle - asideX > from ? middle - asideX : from;
          to = middle + asideX < to ? middle + asideX : to;
        } else if (v > radius || v < -radius) {
          to = Double.NEGATIVE_INFINITY;
        }
        if (from <= to && to > Double.NEGATIVE_INFINITY) {
          left = x0 + from < left ? x0 + from : left;
          right = x0 + to > right ? x0 + to : right;
        }
      }
      out[at] = left;
      out[at + 1] = right;
    }
  }

  /** The array for the ends of so many rows. */
  private double[] room(int rows) {
    if (ends.length < 4 * rows) {
      ends = new double[8 * rows];
    }
    return ends;
  }
}
