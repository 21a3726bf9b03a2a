package plyscape.simulate.stroke;

import plyscape.machine.ArcGeometry;

/**
 * An arc of at most half a turn about a centre, its depth changing evenly with the angle. Start and
 * end may differ in radius by what the standard allows (0.002 mm); the mean is used.
 */
final class ArcStroke extends Stroke {

  private final double cx;
  private final double cy;
  private final double radius;
  private final double startAngle;
  private final double sweep;
  private final double minX;
  private final double maxX;
  private final double minY;
  private final double maxY;

  ArcStroke(Ends ends, Origin origin, double cx, double cy, ArcGeometry arc) {
    super(ends, origin);
    if (Math.abs(arc.sweep()) > Math.PI + 1e-6) {
      throw new IllegalArgumentException(
          "an arc stroke turns by half a circle at most: " + arc.sweep());
    }
    this.cx = cx;
    this.cy = cy;
    this.radius = (arc.radius() + Math.hypot(x1 - cx, y1 - cy)) / 2;
    this.startAngle = arc.startAngle();
    this.sweep = arc.sweep();
    double[] box = {Math.min(x0, x1), Math.max(x0, x1), Math.min(y0, y1), Math.max(y0, y1)};
    for (int quarter = 0; quarter < 4; quarter++) {
      double angle = quarter * Math.PI / 2;
      if (within(fraction(angle))) {
        double x = cx + radius * Math.cos(angle);
        double y = cy + radius * Math.sin(angle);
        box[0] = Math.min(box[0], x);
        box[1] = Math.max(box[1], x);
        box[2] = Math.min(box[2], y);
        box[3] = Math.max(box[3], y);
      }
    }
    minX = box[0];
    maxX = box[1];
    minY = box[2];
    maxY = box[3];
  }

  @Override
  public double length() {
    return radius * Math.abs(sweep);
  }

  @Override
  public double minX() {
    return minX;
  }

  @Override
  public double maxX() {
    return maxX;
  }

  @Override
  public double minY() {
    return minY;
  }

  @Override
  public double maxY() {
    return maxY;
  }

  /** Fraction of the way at an angle; outside 0..1 beyond the ends, on the nearer side. */
  private double fraction(double angle) {
    double offset = angle - (startAngle + sweep / 2);
    offset -= 2 * Math.PI * Math.rint(offset / (2 * Math.PI));
    return 0.5 + offset / sweep;
  }

  private static boolean within(double t) {
    return t >= 0 && t <= 1;
  }

  @Override
  public double nearest(double px, double py) {
    if (px == cx && py == cy) {
      return 0;
    }
    return Math.min(1, Math.max(0, fraction(Math.atan2(py - cy, px - cx))));
  }

  @Override
  public double[] point(double t) {
    double angle = startAngle + sweep * t;
    return new double[] {
      cx + radius * Math.cos(angle), cy + radius * Math.sin(angle), z0 + (z1 - z0) * t
    };
  }

  @Override
  public double deepest(ToolForm tool, double px, double py) {
    double r = tool.radius();
    double rho =
        Math.sqrt((px - cx) * (px - cx) + (py - cy) * (py - cy)); // hypot is ten times slower
    if (Math.abs(rho - radius) > r) {
      return Double.NEGATIVE_INFINITY;
    }
    if (z0 == z1) {
      double t = nearest(px, py);
      double[] p = point(t);
      double d =
          within(t) && t > 0 && t < 1 ? Math.abs(rho - radius) : Math.hypot(px - p[0], py - p[1]);
      if (rho == 0) {
        d = radius;
      }
      return d > r ? Double.NEGATIVE_INFINITY : z0 - tool.height(d);
    }
    double span = Math.PI; // half the angle over which the tool covers the point
    if (rho > 0) {
      double cos = (rho * rho + radius * radius - r * r) / (2 * rho * radius);
      span = cos <= -1 ? Math.PI : Math.acos(Math.min(1, cos));
    }
    double middle = rho > 0 ? fraction(Math.atan2(py - cy, px - cx)) : 0.5;
    double reach = span / Math.abs(sweep);
    double turn = 2 * Math.PI / Math.abs(sweep);
    double best = Double.NEGATIVE_INFINITY;
    for (int k = -1; k <= 1; k++) {
      double low = Math.max(0, middle + k * turn - reach);
      double high = Math.min(1, middle + k * turn + reach);
      if (low <= high) {
        best = Math.max(best, deepestWithin(tool, rho, middle + k * turn, low, high));
      }
    }
    return best;
  }

  /**
   * Depth changes evenly and the tool's outline is convex, so there is one optimum: found by golden
   * section.
   */
  private double deepestWithin(ToolForm tool, double rho, double middle, double low, double high) {
    double deep = z1 > z0 ? high : low;
    if (tool.flat()) {
      return z0 + (z1 - z0) * deep;
    }
    double a = low;
    double b = high;
    for (int i = 0; i < 45; i++) {
      double m1 = b - 0.6180339887498949 * (b - a);
      double m2 = a + 0.6180339887498949 * (b - a);
      if (depthAt(tool, rho, middle, m1) < depthAt(tool, rho, middle, m2)) {
        a = m1;
      } else {
        b = m2;
      }
    }
    return Math.max(depthAt(tool, rho, middle, (a + b) / 2), depthAt(tool, rho, middle, deep));
  }

  private double depthAt(ToolForm tool, double rho, double middle, double t) {
    double half = Math.sin((t - middle) * sweep / 2);
    double d = Math.sqrt((rho - radius) * (rho - radius) + 4 * rho * radius * half * half);
    return z0 + (z1 - z0) * t - tool.height(Math.min(d, tool.radius()));
  }

  @Override
  public int spans(double py, double r, double[] out) {
    int n = disk(x0, y0, py, r, out, 0);
    n = disk(x1, y1, py, r, out, n);
    double dy = py - cy;
    double outer = (radius + r) * (radius + r) - dy * dy;
    if (outer < 0) {
      return n;
    }
    outer = Math.sqrt(outer);
    // The sector of at most half a turn is where two half planes meet: left of the start ray, right
    // of the end ray.
    double turn = Math.signum(sweep);
    double[] range = {-outer, outer};
    clip(range, Math.cos(startAngle) * turn, Math.sin(startAngle) * turn, dy);
    clip(range, -Math.cos(startAngle + sweep) * turn, -Math.sin(startAngle + sweep) * turn, dy);
    double inner = radius > r ? (radius - r) * (radius - r) - dy * dy : -1;
    if (inner <= 0) {
      return add(out, n, range[0], range[1]);
    }
    inner = Math.sqrt(inner);
    n = add(out, n, range[0], Math.min(range[1], -inner));
    return add(out, n, Math.max(range[0], inner), range[1]);
  }

  private int add(double[] out, int n, double low, double high) {
    if (low > high) {
      return n;
    }
    out[2 * n] = cx + low;
    out[2 * n + 1] = cx + high;
    return n + 1;
  }

  private static int disk(double x, double y, double py, double r, double[] out, int n) {
    double h = r * r - (py - y) * (py - y);
    if (h < 0) {
      return n;
    }
    h = Math.sqrt(h);
    out[2 * n] = x - h;
    out[2 * n + 1] = x + h;
    return n + 1;
  }

  /**
   * Keeps the x (from the centre) with dx * py - dy * px >= 0, that is left of the direction (dx,
   * dy).
   */
  private static void clip(double[] range, double dx, double dy, double py) {
    double rest = dx * py;
    if (dy > 0) {
      range[1] = Math.min(range[1], rest / dy);
    } else if (dy < 0) {
      range[0] = Math.max(range[0], rest / dy);
    } else if (rest < 0) {
      range[1] = Double.NEGATIVE_INFINITY;
    }
  }
}
