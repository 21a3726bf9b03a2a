package plyscape.simulate.stroke;

/** A straight motion, possibly up or down on the way, or only up or down. */
final class LineStroke extends Stroke {

  private final double length;
  private final double ux;
  private final double uy;
  private final double slope;

  LineStroke(Ends ends, Origin origin) {
    super(ends, origin);
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
  public double length() {
    return length;
  }

  @Override
  public double minX() {
    return Math.min(x0, x1);
  }

  @Override
  public double maxX() {
    return Math.max(x0, x1);
  }

  @Override
  public double minY() {
    return Math.min(y0, y1);
  }

  @Override
  public double maxY() {
    return Math.max(y0, y1);
  }

  @Override
  public double deepest(ToolForm tool, double px, double py) {
    double wx = px - x0;
    double wy = py - y0;
    double aside = Math.abs(wx * uy - wy * ux);
    double start = length == 0 ? Math.max(z0, z1) : z0;
    return tool.deepest(wx * ux + wy * uy, aside, length, start, slope);
  }

  @Override
  public double nearest(double px, double py) {
    if (length == 0) {
      return z1 > z0 ? 1 : 0;
    }
    return Math.min(1, Math.max(0, ((px - x0) * ux + (py - y0) * uy) / length));
  }

  @Override
  public double[] point(double t) {
    return new double[] {x0 + (x1 - x0) * t, y0 + (y1 - y0) * t, z0 + (z1 - z0) * t};
  }

  @Override
  public int spans(double py, double r, double[] out) {
    out[0] = Double.POSITIVE_INFINITY;
    out[1] = Double.NEGATIVE_INFINITY;
    aroundEnd(x0, py - y0, r, out);
    aroundEnd(x1, py - y1, r, out);
    if (length > 0) {
      betweenEnds(py - y0, r, out);
    }
    return out[0] <= out[1] ? 1 : 0;
  }

  private static void aroundEnd(double x, double wy, double r, double[] out) {
    double h = r * r - wy * wy;
    if (h >= 0) {
      h = Math.sqrt(h);
      widen(x - h, x + h, out);
    }
  }

  /** The strip between the ends: |aside| <= r and 0 <= along <= length. */
  private void betweenEnds(double wy, double r, double[] out) {
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    if (uy != 0) { // aside = wx uy - wy ux
      double a = (wy * ux - r) / uy;
      double b = (wy * ux + r) / uy;
      low = Math.min(a, b);
      high = Math.max(a, b);
    } else if (Math.abs(wy) > r) {
      return;
    }
    if (ux != 0) { // along = wx ux + wy uy
      double a = -wy * uy / ux;
      double b = (length - wy * uy) / ux;
      low = Math.max(low, Math.min(a, b));
      high = Math.min(high, Math.max(a, b));
    } else if (wy * uy < 0 || wy * uy > length) {
      return;
    }
    if (low <= high) {
      widen(x0 + low, x0 + high, out);
    }
  }

  private static void widen(double left, double right, double[] out) {
    out[0] = Math.min(out[0], left);
    out[1] = Math.max(out[1], right);
  }
}
