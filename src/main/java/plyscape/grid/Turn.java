package plyscape.grid;

/**
 * A turn of the ground plane about a point. Immutable.
 *
 * @param degrees counter-clockwise
 * @param x of the point that stays, ground units
 * @param y of that point
 */
public record Turn(double degrees, double x, double y) {

  /** No turn. */
  public static final Turn NONE = new Turn(0, 0, 0);

  /** Checks that all are finite. */
  public Turn {
    if (!Double.isFinite(degrees + x + y)) {
      throw new IllegalArgumentException("no turn: " + degrees + " about " + x + ", " + y);
    }
  }

  /** Whether nothing moves. */
  public boolean none() {
    return degrees == 0;
  }

  /** Turns pairs of coordinates in place. */
  public void map(double[] xy, int count) {
    turn(xy, count, Math.toRadians(degrees));
  }

  /** Turns pairs back in place. */
  public void back(double[] xy, int count) {
    turn(xy, count, -Math.toRadians(degrees));
  }

  private void turn(double[] xy, int count, double angle) {
    if (none()) {
      return;
    }
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    for (int i = 0; i < 2 * count; i += 2) {
      double dx = xy[i] - x;
      double dy = xy[i + 1] - y;
      xy[i] = x + dx * cos - dy * sin;
      xy[i + 1] = y + dx * sin + dy * cos;
    }
  }
}
