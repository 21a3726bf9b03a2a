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
    MoveTrack track = new MoveTrack(this, limits, moves.size());
    track.start(startX, startY, startDepth);
    moves.forEach(track::add);
    track.slowDownInTime();
    double[] seconds = new double[moves.size()];
    double[] sums = new double[4];
    double speed = 0;
    int i = 0;
    for (Move move : moves) {
      double length = track.lengthMm(i);
      int kind = move.kind() == Move.Kind.RAPID ? 1 : 0;
      if (length > 0) {
        double end = track.endSpeed(i, speed);
        seconds[i] = seconds(length, speed, end, track.speed(i), track.acceleration(i));
        speed = end;
      }
      sums[kind] += seconds[i];
      sums[kind + 2] += length;
      i++;
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
}
