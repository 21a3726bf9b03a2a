package plyscape.sample;

/**
 * A smooth line on the ground: a Catmull-Rom curve through given points, sampled evenly in its
 * parameter. Metres.
 */
final class Course {

  private static final int STEPS = 12;

  private final double[][] points;

  /** The curve through {@code knots}, each {x, y}. */
  Course(double[]... knots) {
    int spans = knots.length - 1;
    points = new double[spans * STEPS + 1][];
    for (int i = 0; i < spans; i++) {
      double[] before = knots[Math.max(i - 1, 0)];
      double[] after = knots[Math.min(i + 2, spans)];
      for (int j = 0; j < STEPS; j++) {
        double t = (double) j / STEPS;
        points[i * STEPS + j] =
            new double[] {
              spline(before[0], knots[i][0], knots[i + 1][0], after[0], t),
              spline(before[1], knots[i][1], knots[i + 1][1], after[1], t)
            };
      }
    }
    points[points.length - 1] = knots[spans].clone();
  }

  private static double spline(double p0, double p1, double p2, double p3, double t) {
    return 0.5
        * (2 * p1
            + t
                * (p2
                    - p0
                    + t * (2 * p0 - 5 * p1 + 4 * p2 - p3 + t * (3 * p1 - p0 - 3 * p2 + p3))));
  }

  /** The sampled points, in order. */
  double[][] points() {
    return points;
  }

  /** Exact distance to the sampled course. */
  double distance(double x, double y) {
    double best = Double.MAX_VALUE;
    for (int i = 0; i + 1 < points.length; i++) {
      double ax = points[i][0];
      double ay = points[i][1];
      double dx = points[i + 1][0] - ax;
      double dy = points[i + 1][1] - ay;
      double t = Math.min(Math.max(((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy), 0), 1);
      best = Math.min(best, Math.hypot(x - ax - t * dx, y - ay - t * dy));
    }
    return best;
  }

  /**
   * A distance without creases: from the integral of d^-6 along the course, which for a straight
   * course is 3 pi / (8 r^5). Near enough from about one sample (20 m) away on.
   */
  double softDistance(double x, double y) {
    double sum = 0;
    for (int i = 0; i + 1 < points.length; i++) {
      double dx = x - (points[i][0] + points[i + 1][0]) / 2;
      double dy = y - (points[i][1] + points[i + 1][1]) / 2;
      double square = Math.max(dx * dx + dy * dy, 1);
      double length = Math.hypot(points[i + 1][0] - points[i][0], points[i + 1][1] - points[i][1]);
      sum += length / (square * square * square);
    }
    return Math.pow(3 * Math.PI / (8 * sum), 0.2);
  }

  /** Point and unit direction at a share of the way: {x, y, dx, dy}. */
  double[] at(double share) {
    double u = share * (points.length - 1);
    int i = Math.min((int) u, points.length - 2);
    double dx = points[i + 1][0] - points[i][0];
    double dy = points[i + 1][1] - points[i][1];
    double length = Math.hypot(dx, dy);
    return new double[] {
      points[i][0] + (u - i) * dx, points[i][1] + (u - i) * dy, dx / length, dy / length
    };
  }
}
