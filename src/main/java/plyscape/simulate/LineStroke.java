package plyscape.simulate;

/** A straight motion, possibly up or down on the way, or only up or down. */
final class LineStroke extends Stroke {

  private final double length;
  private final double ux;
  private final double uy;
  private final double slope;

  LineStroke(Ends ends, int line, boolean mustNotCut, boolean spindleOn) {
    super(ends, line, mustNotCut, spindleOn);
    double dx = x1 - x0;
    double dy = y1 - y0;
    double flat = Math.hypot(dx, dy);
    if (flat < 1e-9) { // straight up or down
      length = 0;
      ux = 1;
      uy = 0;
      slope = 0;
    } else {
      length = flat;
      ux = dx / flat;
      uy = dy / flat;
      slope = (z1 - z0) / flat;
    }
  }

  @Override
  double length() {
    return length;
  }

  @Override
  double minX() {
    return Math.min(x0, x1);
  }

  @Override
  double maxX() {
    return Math.max(x0, x1);
  }

  @Override
  double minY() {
    return Math.min(y0, y1);
  }

  @Override
  double maxY() {
    return Math.max(y0, y1);
  }

  @Override
  double deepest(ToolForm tool, double px, double py) {
    double wx = px - x0;
    double wy = py - y0;
    double aside = Math.abs(wx * uy - wy * ux);
    double start = length == 0 ? Math.max(z0, z1) : z0;
    return tool.deepest(wx * ux + wy * uy, aside, length, start, slope);
  }

  @Override
  double nearest(double px, double py) {
    if (length == 0) {
      return z1 > z0 ? 1 : 0;
    }
    return Math.min(1, Math.max(0, ((px - x0) * ux + (py - y0) * uy) / length));
  }

  @Override
  double[] point(double t) {
    return new double[] {x0 + (x1 - x0) * t, y0 + (y1 - y0) * t, z0 + (z1 - z0) * t};
  }

  @Override
  int spans(double py, double r, double[] out) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double h = r * r - (py - y0) * (py - y0);
    if (h >= 0) {
      h = Math.sqrt(h);
      left = x0 - h;
      right = x0 + h;
    }
    h = r * r - (py - y1) * (py - y1);
    if (h >= 0) {
      h = Math.sqrt(h);
      left = Math.min(left, x1 - h);
      right = Math.max(right, x1 + h);
    }
    if (length > 0) { // the strip between the ends: |aside| <= r and 0 <= along <= length
      double wy = py - y0;
      double low = Double.NEGATIVE_INFINITY;
      double high = Double.POSITIVE_INFINITY;
      if (uy != 0) { // aside = wx uy - wy ux
        double a = (wy * ux - r) / uy;
        double b = (wy * ux + r) / uy;
        low = Math.min(a, b);
        high = Math.max(a, b);
      } else if (Math.abs(wy) > r) {
        high = Double.NEGATIVE_INFINITY;
      }
      if (ux != 0) { // along = wx ux + wy uy
        double a = -wy * uy / ux;
        double b = (length - wy * uy) / ux;
        low = Math.max(low, Math.min(a, b));
        high = Math.min(high, Math.max(a, b));
      } else if (wy * uy < 0 || wy * uy > length) {
        high = Double.NEGATIVE_INFINITY;
      }
      if (low <= high) {
        left = Math.min(left, x0 + low);
        right = Math.max(right, x0 + high);
      }
    }
    out[0] = left;
    out[1] = right;
    return left <= right ? 1 : 0;
  }
}
