package plyscape.machine;

import java.util.List;

/**
 * Gives the time that a list of moves takes on a controller with look-ahead, from rest to rest.
 *
 * <p>Speed along each move is a trapezoid or triangle: never over the feed (rapids: the machine's
 * rapid), never over what the axes can do, on arcs never over sqrt(a r). Between two moves the
 * speed is held to that of a circle which touches both and stays within the cornering deviation d
 * of the corner: with the inner angle t between them, R = d sin(t/2) / (1 - sin(t/2)) and v =
 * sqrt(a R) (references.md, section 5); a reversal is a full stop, going straight on has no limit.
 * One pass backwards and one forwards over all moves give the highest speeds that respect every
 * acceleration, so the look-ahead has no end: a real controller with a short buffer is slower on
 * very short segments. Jerk, spindle start and tool changes are left out.
 */
public final class MotionModel {

  private final AxisLimits limits;
  private final double corneringMm;

  /** Of a machine, the same limits on each axis. */
  public MotionModel(Machine machine) {
    this(AxisLimits.of(machine), machine.corneringMm());
  }

  /** With limits of each axis; cornering deviation in mm. */
  public MotionModel(AxisLimits limits, double corneringMm) {
    if (!(corneringMm >= 0)) {
      throw new IllegalArgumentException("cornering must not be negative: " + corneringMm);
    }
    this.limits = limits;
    this.corneringMm = corneringMm;
  }

  /**
   * Times of moves that start at a point, at rest, and end at rest.
   *
   * @throws IllegalArgumentException if a cutting move that goes anywhere has no feed
   */
  public Times times(double startX, double startY, double startDepth, List<Move> moves) {
    int n = moves.size();
    double[] length = new double[n];
    double[] speed = new double[n];
    double[] acceleration = new double[n];
    double[] entry =
        new double[n + 1]; // greatest speed at the start of each move, later made attainable
    measure(startX, startY, startDepth, moves, length, speed, acceleration, entry);
    for (int i = n - 1; i >= 0; i--) {
      if (length[i] > 0) {
        entry[i] =
            Math.min(
                entry[i], Math.sqrt(entry[i + 1] * entry[i + 1] + 2 * acceleration[i] * length[i]));
      } else {
        entry[i] = Math.min(entry[i], entry[i + 1]);
      }
    }
    double[] seconds = new double[n];
    double[] sums = new double[4];
    double v0 = 0;
    for (int i = 0; i < n; i++) {
      boolean rapid = moves.get(i).kind() == Move.Kind.RAPID;
      if (length[i] > 0) {
        double v1 = Math.min(entry[i + 1], Math.sqrt(v0 * v0 + 2 * acceleration[i] * length[i]));
        seconds[i] = seconds(length[i], v0, v1, speed[i], acceleration[i]);
        v0 = v1;
      }
      sums[rapid ? 1 : 0] += seconds[i];
      sums[rapid ? 3 : 2] += length[i];
    }
    return new Times(sums[0], sums[1], sums[2], sums[3], seconds);
  }

  /**
   * Seconds for a length with given speeds at both ends (attainable within it): peak speed vp =
   * min(v, sqrt(a d + (v0^2 + v1^2) / 2)), time (2 vp - v0 - v1) / a + rest / vp (references.md,
   * section 5).
   */
  static double seconds(double length, double v0, double v1, double v, double a) {
    double peak = Math.min(v, Math.sqrt(a * length + (v0 * v0 + v1 * v1) / 2));
    double ramps = (2 * peak * peak - v0 * v0 - v1 * v1) / (2 * a);
    return (2 * peak - v0 - v1) / a + Math.max(0, length - ramps) / peak;
  }

  /**
   * Speed at which a corner is passed, mm/s, from the cosine of the angle by which the direction
   * turns.
   */
  double cornerSpeed(double cosTurn, double acceleration) {
    double halfSine = Math.sqrt(Math.max(0, (1 + cosTurn) / 2));
    if (halfSine > 1 - 1e-12) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.sqrt(acceleration * corneringMm * halfSine / (1 - halfSine));
  }

  private void measure(
      double x,
      double y,
      double depth,
      List<Move> moves,
      double[] length,
      double[] speed,
      double[] acceleration,
      double[] entry) {
    double px = 0;
    double py = 0;
    double pz = 0; // direction at the end of the move before; zero before the first
    double lastSpeed = 0;
    double lastAcceleration = Double.POSITIVE_INFINITY;
    int i = 0;
    for (Move move : moves) {
      double dz = move.depth() - depth;
      double sx;
      double sy;
      double sz;
      double ex;
      double ey;
      double v = Double.POSITIVE_INFINITY;
      double a;
      if (move.isArc()) {
        ArcGeometry arc = ArcGeometry.of(x, y, depth, move);
        length[i] = arc.length();
        double flat = length[i] > 0 ? Math.abs(arc.radius() * arc.sweep()) / length[i] : 0;
        double turn = Math.signum(arc.sweep());
        double end = arc.startAngle() + arc.sweep();
        sx = -Math.sin(arc.startAngle()) * turn * flat;
        sy = Math.cos(arc.startAngle()) * turn * flat;
        ex = -Math.sin(end) * turn * flat;
        ey = Math.cos(end) * turn * flat;
        sz = length[i] > 0 ? dz / length[i] : 0;
        double axisA = Math.min(limits.acceleration(flat, 0, sz), limits.acceleration(0, flat, sz));
        a = axisA;
        v = Math.min(limits.speed(flat, 0, sz), limits.speed(0, flat, sz));
        v = Math.min(v, Math.sqrt(axisA * arc.radius()) / Math.max(flat, 1e-9));
      } else {
        double dx = move.x() - x;
        double dy = move.y() - y;
        length[i] = Math.sqrt(dx * dx + dy * dy + dz * dz);
        double scale = length[i] > 0 ? 1 / length[i] : 0;
        sx = dx * scale;
        sy = dy * scale;
        sz = dz * scale;
        ex = sx;
        ey = sy;
        a = limits.acceleration(sx, sy, sz);
        v = limits.speed(sx, sy, sz);
      }
      if (length[i] > 0) {
        if (move.kind() != Move.Kind.RAPID) {
          if (!(move.feedMmPerMin() > 0)) {
            throw new IllegalArgumentException("cutting move " + i + " has no feed");
          }
          v = Math.min(v, move.feedMmPerMin() / 60);
        }
        double corner =
            px == 0 && py == 0 && pz == 0
                ? 0
                : cornerSpeed(px * sx + py * sy + pz * sz, Math.min(a, lastAcceleration));
        entry[i] = Math.min(Math.min(corner, lastSpeed), v);
        px = ex;
        py = ey;
        pz = sz;
        lastSpeed = v;
        lastAcceleration = a;
      } else {
        entry[i] = Double.POSITIVE_INFINITY; // goes nowhere: no corner of its own
      }
      speed[i] = v;
      acceleration[i] = a;
      x = move.x();
      y = move.y();
      depth = move.depth();
      i++;
    }
    entry[i] = 0;
  }
}
