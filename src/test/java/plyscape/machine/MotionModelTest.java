package plyscape.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Expected values: references.md section 5 (formulas quoted there, values derived from them). */
class MotionModelTest {

  private static MotionModel model(double speed, double acceleration, double cornering) {
    return new MotionModel(
        new AxisLimits(
            speed, speed, speed, acceleration, acceleration, acceleration, speed, acceleration),
        cornering);
  }

  private static double lineTime(double length, double speed, double acceleration) {
    return model(1000, acceleration, 0.01)
        .times(0, 0, 0, List.of(Move.line(length, 0, 0, speed * 60)))
        .totalS();
  }

  @Test
  void singleMove_restToRest() {
    assertEquals(2.100, lineTime(100, 50, 500), 1e-12);
    assertEquals(0.200, lineTime(5, 50, 500), 1e-12);
    assertEquals(0.1265, lineTime(2, 50, 500), 5e-5);
  }

  /** A machine goes no faster than its rapid, whatever feed a program asks for. */
  @Test
  void feedOverTheRapid_countsAsTheRapid() {
    MotionModel model = new MotionModel(Workshop.ROUTER.with(new Motion(3000, 500, 0.01, 0)));
    List<Move> asked = List.of(Move.line(100, 0, 0, 9000), Move.arc(true, 100, 80, 0, 0, 40, 9000));
    List<Move> rapid = List.of(Move.line(100, 0, 0, 3000), Move.arc(true, 100, 80, 0, 0, 40, 3000));
    double seconds = model.times(0, 0, 0, asked).totalS();
    assertEquals(model.times(0, 0, 0, rapid).totalS(), seconds);
    assertEquals(2.100, model.times(0, 0, 0, asked.subList(0, 1)).totalS(), 1e-12);
  }

  @Test
  void singleMove_withEndSpeeds() {
    assertEquals(0.5781, MotionModel.seconds(20, 10, 0, 40, 400), 5e-5);
    assertEquals(0.0811, MotionModel.seconds(1, 10, 0, 40, 400), 5e-5);
  }

  @Test
  void cornerSpeed_ofInnerAngles() {
    MotionModel model = model(1000, 500, 0.01);
    double[][] expected = {{90, 3.474}, {135, 7.790}, {150, 11.905}, {170, 36.18}};
    for (double[] e : expected) {
      assertEquals(
          e[1],
          model.cornerSpeed(Math.cos(Math.toRadians(180 - e[0])), 500),
          6e-4 * e[1],
          "angle " + e[0]);
    }
    assertEquals(0, model.cornerSpeed(-1, 500));
    assertEquals(Double.POSITIVE_INFINITY, model.cornerSpeed(1, 500));
  }

  @Test
  void square_closedForm() {
    double v = 40;
    double a = 500;
    double corner = Math.sqrt(a * 0.01 * Math.sqrt(0.5) / (1 - Math.sqrt(0.5)));
    double first = (2 * v - corner) / a + (50 - (2 * v * v - corner * corner) / (2 * a)) / v;
    double middle = (2 * v - 2 * corner) / a + (50 - (v * v - corner * corner) / a) / v;
    List<Move> square =
        List.of(
            Move.line(50, 0, 0, v * 60),
            Move.line(50, 50, 0, v * 60),
            Move.line(0, 50, 0, v * 60),
            Move.line(0, 0, 0, v * 60));
    Times times = model(100, a, 0.01).times(0, 0, 0, square);
    assertEquals(2 * first + 2 * middle, times.cutS(), 1e-12);
    assertEquals(200, times.cutMm(), 1e-12);
    assertEquals(first, times.moveS()[3], 1e-12);
  }

  @Test
  void square_noCorneringStopsAtEachCorner() {
    List<Move> square =
        List.of(
            Move.line(50, 0, 0, 2400),
            Move.line(50, 50, 0, 2400),
            Move.line(0, 50, 0, 2400),
            Move.line(0, 0, 0, 2400));
    assertEquals(
        4 * (50 / 40.0 + 40 / 500.0), model(100, 500, 0).times(0, 0, 0, square).cutS(), 1e-12);
  }

  @Test
  void circle_speedHeldToSquareRootOfAccelerationTimesRadius() {
    double v = Math.sqrt(500 * 3);
    assertEquals(38.73, v, 5e-3); // references.md section 5
    List<Move> circle =
        List.of(Move.arc(false, -3, 0, 1, 0, 0, 6000), Move.arc(false, 3, 0, 1, 0, 0, 6000));
    Times times = model(200, 500, 0.02).times(3, 0, 1, circle);
    assertEquals(6 * Math.PI, times.cutMm(), 1e-12);
    assertEquals(
        6 * Math.PI / v + v / 500,
        times.cutS(),
        1e-9); // halves meet in a straight line: no slowing down
  }

  @Test
  void fullCircle_inOneMove() {
    Times times = model(200, 500, 0.02).times(5, 0, 1, List.of(Move.arc(true, 5, 0, 2, 0, 0, 600)));
    assertEquals(Math.hypot(10 * Math.PI, 1), times.cutMm(), 1e-9);
  }

  @Test
  void axisLimits_boundAnySlope() {
    AxisLimits limits = new AxisLimits(100, 100, 10, 500, 500, 100, 100, 500);
    MotionModel model = new MotionModel(limits, 0.02);
    double up = model.times(0, 0, 0, List.of(Move.rapid(0, 0, -20))).rapidS();
    assertEquals(20 / 10.0 + 10 / 100.0, up, 1e-12);
    Times slope = model.times(0, 0, 0, List.of(Move.rapid(30, 0, 40))); // Z takes 4/5 of the way
    double v = 10 / 0.8;
    double a = 100 / 0.8;
    assertEquals(50 / v + v / a, slope.rapidS(), 1e-12);
  }

  @Test
  void feedlessCut_isRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> model(50, 500, 0.01).times(0, 0, 0, List.of(Move.line(1, 0, 0, 0))));
  }

  @Test
  void movesThatGoNowhere_takeNoTimeAndStopNothing() {
    MotionModel model = model(100, 500, 0.01);
    Move a = Move.line(30, 0, 0, 2400);
    Move b = Move.line(60, 0, 0, 2400);
    assertEquals(
        model.times(0, 0, 0, List.of(a, b)).totalS(),
        model.times(0, 0, 0, List.of(a, a, a, b)).totalS(),
        1e-12);
  }

  /**
   * Time-optimal speed along the path on a fine grid of positions: shares only the speed limits
   * with the model.
   */
  @Test
  void randomPaths_agreeWithFineIntegrationWithinOnePercent() {
    for (int seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      double a = 100 + random.nextInt(500);
      double cornering = 0.005 + 0.03 * random.nextDouble();
      List<Move> moves = new ArrayList<>();
      double x = 0;
      double y = 0;
      double z = 0;
      double heading = 0;
      for (int i = 0; i < 25; i++) {
        heading += (random.nextDouble() - 0.5) * (random.nextInt(3) == 0 ? 6 : 0.6);
        double step = Math.pow(10, 1.6 * random.nextDouble() - 0.8);
        if (random.nextInt(4) == 0) { // arc, half a turn at most, leaving along the heading
          double r = 0.5 + 4 * random.nextDouble();
          double sweep = 0.3 + 2.5 * random.nextDouble();
          double cx = x - r * Math.sin(heading);
          double cy = y + r * Math.cos(heading);
          heading += sweep;
          x = cx + r * Math.sin(heading);
          y = cy - r * Math.cos(heading);
          moves.add(Move.arc(false, x, y, z, cx, cy, 1800));
        } else {
          x += step * Math.cos(heading);
          y += step * Math.sin(heading);
          z += random.nextInt(5) == 0 ? step * (random.nextDouble() - 0.5) : 0;
          moves.add(random.nextInt(6) == 0 ? Move.rapid(x, y, z) : Move.line(x, y, z, 1800));
        }
      }
      double expected = integrate(moves, 4000 / 60.0, a, cornering);
      double actual = model(4000 / 60.0, a, cornering).times(0, 0, 0, moves).totalS();
      assertEquals(expected, actual, 0.01 * expected, "seed " + seed);
    }
  }

  private static double integrate(List<Move> moves, double rapid, double a, double cornering) {
    double ds = 0.0005;
    List<double[]> points =
        new ArrayList<>(); // each: step length, speed limit over the step, corner limit at its
    // start
    double x = 0;
    double y = 0;
    double z = 0;
    double[] last = null;
    for (Move m : moves) {
      double[] first;
      double length;
      double limit = m.kind() == Move.Kind.RAPID ? rapid : m.feedMmPerMin() / 60;
      double[] end;
      if (m.isArc()) {
        double r = Math.hypot(x - m.centreX(), y - m.centreY());
        double a0 = Math.atan2(y - m.centreY(), x - m.centreX());
        double a1 = Math.atan2(m.y() - m.centreY(), m.x() - m.centreX());
        double sweep = a1 > a0 ? a1 - a0 : a1 - a0 + 2 * Math.PI;
        length = r * sweep;
        limit = Math.min(limit, Math.sqrt(a * r));
        first = new double[] {-Math.sin(a0), Math.cos(a0), 0};
        end = new double[] {-Math.sin(a1), Math.cos(a1), 0};
      } else {
        length =
            Math.sqrt(Math.pow(m.x() - x, 2) + Math.pow(m.y() - y, 2) + Math.pow(m.depth() - z, 2));
        first = new double[] {(m.x() - x) / length, (m.y() - y) / length, (m.depth() - z) / length};
        end = first;
      }
      double corner = 0;
      if (last != null) {
        double inner =
            Math.PI
                - Math.acos(
                    Math.max(
                        -1,
                        Math.min(1, last[0] * first[0] + last[1] * first[1] + last[2] * first[2])));
        double s = Math.sin(inner / 2);
        corner = s > 1 - 1e-12 ? 1e9 : Math.sqrt(a * cornering * s / (1 - s));
      }
      int steps = (int) Math.ceil(length / ds);
      for (int i = 0; i < steps; i++) {
        points.add(new double[] {length / steps, limit, i == 0 ? corner : 1e9});
      }
      last = end;
      x = m.x();
      y = m.y();
      z = m.depth();
    }
    int n = points.size();
    double[] v = new double[n + 1];
    for (int i = n - 1; i >= 0; i--) {
      double[] p = points.get(i);
      double before = i > 0 ? points.get(i - 1)[1] : 0;
      v[i] =
          Math.min(
              Math.min(p[2], Math.min(p[1], before)),
              Math.sqrt(v[i + 1] * v[i + 1] + 2 * a * p[0]));
    }
    double t = 0;
    for (int i = 0; i < n; i++) {
      double[] p = points.get(i);
      v[i + 1] = Math.min(v[i + 1], Math.sqrt(v[i] * v[i] + 2 * a * p[0]));
      t += 2 * p[0] / (v[i] + v[i + 1]);
    }
    return t;
  }

  /**
   * Half a million short lines around a circle of 100 mm are as good as the circle itself: length
   * over feed.
   */
  @Test
  void longLists_ofShortLines_runAtTheFeed() {
    List<Move> moves = new ArrayList<>();
    for (int i = 1; i <= 500_000; i++) {
      moves.add(Move.line(Math.cos(i * 0.01) * 100, Math.sin(i * 0.01) * 100, 0, 1800));
    }
    Times times = model(4000 / 60.0, 300, 0.02).times(100, 0, 0, moves);
    double length = 500_000 * 2 * 100 * Math.sin(0.005);
    assertEquals(length, times.cutMm(), 1e-3);
    assertEquals(
        length / 30 + 30 / 300.0, times.totalS(), 1e-3); // and once v/a for starting and stopping
  }
}
