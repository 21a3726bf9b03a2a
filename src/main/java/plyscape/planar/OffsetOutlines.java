package plyscape.planar;

import java.util.Arrays;

/**
 * Outlines at a distance from rings and lines, raw: they may cross themselves and each other, but
 * each winds around exactly what it should, so that one noding of them all gives the union, the
 * shrunken or the grown set, however many there are. An outline is the sum of a strip along each
 * segment and a fan around each outer corner; sides that two of them share are never written, so
 * rounding to the grid opens no gaps between them. What winds: after {@link #shrunk} a place wound
 * around once is farther than the distance from the ring, on its left; after {@link #grown} and
 * {@link #widened} a place wound around at least once is nearer than that, or on the ring's left.
 *
 * <p>Exact but for the grid (0.0007 mm) and the chords of fans, which lie within the circle by the
 * sagitta given.
 */
public final class OffsetOutlines {

  /**
   * Inner corners up to this angle, radians, are linked directly when a set that has been shrunk is
   * grown again: nowhere is its outline bent in more tightly than by the distance, so that the
   * neighbours' strips cover what is left out.
   */
  private static final double LINK = 0.5;

  private final Linework out;
  private final int component;
  private final double sagittaUnits;
  private int[] x = new int[256];
  private int[] y = new int[256];
  private int n;

  /**
   * Prepares.
   *
   * @param out where the outlines go, with weight 1
   * @param component of the winding vector
   * @param sagittaUnits how far chords of fans may be inside their circle, grid units
   */
  public OffsetOutlines(Linework out, int component, double sagittaUnits) {
    this.out = out;
    this.component = component;
    this.sagittaUnits = sagittaUnits;
  }

  /** What is farther than a distance from a ring (its last point is its first), on its left. */
  public void shrunk(int[] ringX, int[] ringY, double distanceUnits) {
    ring(doubles(ringX), doubles(ringY), ringX.length - 1, distanceUnits, 1, 0);
  }

  /**
   * The ring's left and what is nearer than a distance to it; the ring is one of a shrunken set.
   */
  public void grown(int[] ringX, int[] ringY, double distanceUnits) {
    ring(doubles(ringX), doubles(ringY), ringX.length - 1, distanceUnits, -1, LINK);
  }

  /** What is nearer than half a width to a line: round ends, round joins. Points needn't differ. */
  public void widened(double[] lineX, double[] lineY, double halfWidthUnits) {
    int count = 0;
    double[] px = new double[2 * lineX.length];
    double[] py = new double[2 * lineX.length];
    for (int i = 0; i < lineX.length; i++) {
      if (count == 0 || lineX[i] != px[count - 1] || lineY[i] != py[count - 1]) {
        px[count] = lineX[i];
        py[count++] = lineY[i];
      }
    }
    if (count == 1) {
      // A line without length is a dot, as a pen would draw it.
      px[count] = px[0] + 1e-3;
      py[count++] = py[0];
    }
    // There and back: the strips on the right of both ways, and half a turn at each end.
    int points = count;
    for (int i = count - 2; i > 0; i--) {
      px[points] = px[i];
      py[points++] = py[i];
    }
    ring(px, py, points, halfWidthUnits, -1, 0);
  }

  private static double[] doubles(int[] values) {
    return Arrays.stream(values).asDoubleStream().toArray();
  }

  /**
   * Writes one outline.
   *
   * @param points different ones, the first not repeated at the end
   * @param side 1 for the left, -1 for the right
   */
  private void ring(double[] px, double[] py, int points, double d, int side, double link) {
    n = 0;
    double mostTurn = 2 * Math.acos(Math.max(0, 1 - sagittaUnits / d));
    Corner[] corners = new Corner[points];
    for (int i = 0; i < points; i++) {
      int before = i == 0 ? points - 1 : i - 1;
      int after = i + 1 == points ? 0 : i + 1;
      corners[i] =
          Corner.of(
              px[i] - px[before], py[i] - py[before], px[after] - px[i], py[after] - py[i], side);
    }
    for (int i = 0; i < points; i++) {
      Corner corner = corners[i];
      if (side * corner.turn <= 0) {
        fan(px[i], py[i], -side * corner.ay * d, side * corner.ax * d, corner.turn, mostTurn);
      } else {
        double own = corner.shortened(d, side);
        double before = corners[i == 0 ? points - 1 : i - 1].shortened(d, side);
        double after = corners[i + 1 == points ? 0 : i + 1].shortened(d, side);
        // Were both ends of a side cut off by more than it is long, a small square would come out
        // inside out, and wind like one that has room.
        boolean mitred = own + before <= corner.a && own + after <= corner.b;
        innerCorner(px[i], py[i], corner, side * d, mitred ? own : -1, link);
      }
    }
    if (n >= 3) {
      int[] ringX = Arrays.copyOf(x, n + 1);
      int[] ringY = Arrays.copyOf(y, n + 1);
      ringX[n] = x[0];
      ringY[n] = y[0];
      out.add(ringX, ringY, component, 1, false);
    }
  }

  /** Directions and lengths of the sides that meet at a point, and the turn between them. */
  private record Corner(
      double ax, double ay, double a, double bx, double by, double b, double turn) {

    static Corner of(double ax, double ay, double bx, double by, int side) {
      double a = Math.hypot(ax, ay);
      double b = Math.hypot(bx, by);
      double ux = ax / a;
      double uy = ay / a;
      double vx = bx / b;
      double vy = by / b;
      double cross = ux * vy - uy * vx;
      double dot = ux * vx + uy * vy;
      boolean back = Math.abs(cross) < 1e-12 && dot < 0;
      return new Corner(ux, uy, a, vx, vy, b, back ? -side * Math.PI : Math.atan2(cross, dot));
    }

    /** By how much the strips' outer sides are shorter there; 0 at an outer corner. */
    double shortened(double d, int side) {
      return side * turn <= 0 ? 0 : Math.abs(d * Math.tan(turn / 2));
    }
  }

  /** Points around a corner, from one offset through a turn. */
  private void fan(double cx, double cy, double ox, double oy, double turn, double mostTurn) {
    int steps = (int) Math.ceil(Math.abs(turn) / mostTurn - 1e-9);
    point(cx + ox, cy + oy);
    for (int k = 1; k <= steps; k++) {
      double cos = Math.cos(turn * k / steps);
      double sin = Math.sin(turn * k / steps);
      point(cx + ox * cos - oy * sin, cy + ox * sin + oy * cos);
    }
  }

  private void innerCorner(
      double cx, double cy, Corner corner, double d, double shortened, double link) {
    double ax = corner.ax;
    double ay = corner.ay;
    if (shortened >= 0) {
      // The strips' outer sides cross: what lies between there and the corner is in both strips.
      point(cx - ay * d - ax * shortened, cy + ax * d - ay * shortened);
      return;
    }
    point(cx - ay * d, cy + ax * d);
    if (Math.abs(corner.turn) > link) {
      point(cx, cy);
    }
    point(cx - corner.by * d, cy + corner.bx * d);
  }

  private void point(double px, double py) {
    int ix = (int) Math.rint(px);
    int iy = (int) Math.rint(py);
    if (n > 0 && x[n - 1] == ix && y[n - 1] == iy) {
      return;
    }
    if (n == x.length) {
      x = Arrays.copyOf(x, 2 * n);
      y = Arrays.copyOf(y, 2 * n);
    }
    x[n] = ix;
    y[n++] = iy;
  }
}
