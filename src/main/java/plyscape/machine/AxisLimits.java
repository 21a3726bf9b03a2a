package plyscape.machine;

/**
 * Greatest speed (mm/s) and acceleration (mm/s2) of each axis, X Y Z in this order. Immutable.
 *
 * <p>Along the path both are also held to {@code pathAcceleration} and {@code pathSpeed}, because
 * controllers are set up with one figure that must do for any direction; this is also what the
 * closed forms in the literature assume.
 */
public record AxisLimits(
    double speedX,
    double speedY,
    double speedZ,
    double accelerationX,
    double accelerationY,
    double accelerationZ,
    double pathSpeed,
    double pathAcceleration) {

  /** Checks that all are positive. */
  public AxisLimits {
    if (!(speedX > 0 && speedY > 0 && speedZ > 0 && pathSpeed > 0)
        || !(accelerationX > 0 && accelerationY > 0 && accelerationZ > 0 && pathAcceleration > 0)) {
      throw new IllegalArgumentException("axis limits must be positive");
    }
  }

  /** The same limit on each axis and along the path: rapid as the speed, acceleration as given. */
  public static AxisLimits of(Machine machine) {
    double v = machine.rapidMmPerMin() / 60;
    double a = machine.accelerationMmPerS2();
    return new AxisLimits(v, v, v, a, a, a, v, a);
  }

  /** Greatest speed along a unit direction, mm/s. */
  double speed(double ux, double uy, double uz) {
    return Math.min(pathSpeed, least(ux, uy, uz, speedX, speedY, speedZ));
  }

  /** Greatest acceleration along a unit direction, mm/s2. */
  double acceleration(double ux, double uy, double uz) {
    return Math.min(
        pathAcceleration, least(ux, uy, uz, accelerationX, accelerationY, accelerationZ));
  }

  private static double least(double ux, double uy, double uz, double x, double y, double z) {
    return Math.min(x / Math.abs(ux), Math.min(y / Math.abs(uy), z / Math.abs(uz)));
  }
}
