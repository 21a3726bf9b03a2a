package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.machine.Move;
import plyscape.toolpath.task.PathOptions;

class ArcFitterTest {

  private static final double TOLERANCE = PathOptions.ARC_TOLERANCE_MM;
  private static final double DEPTH = 1.5;

  private static List<Move> lines(double[][] points) {
    List<Move> moves = new ArrayList<>();
    for (int i = 1; i < points.length; i++) {
      moves.add(Move.line(points[i][0], points[i][1], DEPTH, 1800));
    }
    return moves;
  }

  private static List<Move> fit(double[][] points, double left, double right) {
    return ArcFitter.fit(points[0][0], points[0][1], DEPTH, lines(points), left, right);
  }

  private static double[][] circle(double radius, int points) {
    double[][] circle = new double[points + 1][];
    for (int i = 0; i <= points; i++) {
      double a = 2 * Math.PI * (i % points) / points;
      circle[i] = new double[] {50 + radius * Math.cos(a), 60 + radius * Math.sin(a)};
    }
    return circle;
  }

  @Test
  void circle_isThreeArcsOfItsRadius() {
    List<Move> arcs = fit(circle(10, 200), TOLERANCE, TOLERANCE);
    assertTrue(arcs.size() <= 3, arcs.size() + " moves");
    for (Move arc : arcs.subList(0, 2)) {
      assertEquals(Move.Kind.COUNTERCLOCKWISE, arc.kind());
      assertEquals(10, Math.hypot(arc.x() - arc.centreX(), arc.y() - arc.centreY()), TOLERANCE);
      assertEquals(50, arc.centreX(), 2 * TOLERANCE);
      assertEquals(60, arc.centreY(), 2 * TOLERANCE);
    }
    Move last = arcs.get(arcs.size() - 1);
    assertEquals(60, last.x());
    assertEquals(60, last.y());
  }

  @Test
  void coarseCircle_whoseChordsBulgeMoreThanTheTolerance_staysLines() {
    // Sagitta of a 20-gon of radius 10: 0.123 mm.
    assertEquals(20, fit(circle(10, 20), TOLERANCE, TOLERANCE).size());
  }

  @Test
  void square_collinearPointsMerge_cornersStay() {
    double[][] points = new double[41][];
    for (int i = 0; i <= 40; i++) {
      int side = i / 10 % 4;
      double t = i % 10;
      points[i] = new double[][] {{t, 0}, {10, t}, {10 - t, 10}, {0, 10 - t}}[side];
    }
    List<Move> moves = fit(points, TOLERANCE, TOLERANCE);
    assertEquals(
        List.of(
            Move.line(10, 0, DEPTH, 1800),
            Move.line(10, 10, DEPTH, 1800),
            Move.line(0, 10, DEPTH, 1800),
            Move.line(0, 0, DEPTH, 1800)),
        moves);
  }

  @Test
  void feedChangesRampsRapidsAndArcs_stay() {
    List<Move> moves =
        List.of(
            Move.rapid(0, 0, -4),
            Move.rapid(0, 0, -0.5),
            Move.line(1, 0, 0.5, 500),
            Move.line(2, 0, 1, 500),
            Move.line(3, 0, 1, 500),
            Move.line(4, 0, 1, 900),
            Move.line(5, 0, 1, 900),
            Move.arc(true, 6, -1, 1, 5, -1, 900),
            Move.line(6, -2, 1, 900),
            Move.line(6, -3, 1, 900),
            Move.rapid(6, -3, -4));
    List<Move> fitted = ArcFitter.fit(9, 9, -4, moves, TOLERANCE, TOLERANCE);
    assertEquals(
        List.of(
            moves.get(0),
            moves.get(1),
            moves.get(2),
            moves.get(3),
            moves.get(4),
            moves.get(6),
            moves.get(7),
            moves.get(9),
            moves.get(10)),
        fitted);
  }

  @Test
  void noTolerance_isRefused() {
    assertThrows(IllegalArgumentException.class, () -> ArcFitter.fit(0, 0, 0, List.of(), 0, 0.005));
  }

  /** Steps back and forth on the spot aren't a straight run. */
  @Test
  void pathThatTurnsBack_keepsItsTip() {
    double[][] there = {{0, 0}, {5, 0}, {10, 0}, {5, 0.002}, {0, 0.004}};
    List<Move> moves = fit(there, TOLERANCE, TOLERANCE);
    assertTrue(moves.stream().anyMatch(m -> m.x() == 10), moves.toString());
  }

  /**
   * Smooth curves with up to 0.001 mm of noise: both ways within the tolerance, by sampling, and
   * few enough moves.
   */
  @Test
  void seededSmoothCurves_stayWithinTheToleranceBothWays() {
    int before = 0;
    int after = 0;
    for (int seed = 0; seed < 200; seed++) {
      double[][] points = smooth(new Random(seed), 250, 0.001);
      List<Move> moves = fit(points, TOLERANCE, TOLERANCE);
      before += points.length - 1;
      after += moves.size();
      check(points, moves, TOLERANCE, TOLERANCE, "seed " + seed);
    }
    assertTrue(after < before / 5, before + " lines became " + after + " moves");
  }

  /** A wall on the left: there the new path may come only 0.001 mm nearer. */
  @Test
  void seededCurvesWithAWallOnOneSide_dontComeNearerToIt() {
    for (int seed = 0; seed < 100; seed++) {
      double[][] points = smooth(new Random(seed), 200, 0.0004);
      check(points, fit(points, 0.001, TOLERANCE), 0.001, TOLERANCE, "left, seed " + seed);
      check(points, fit(points, TOLERANCE, 0.001), TOLERANCE, 0.001, "right, seed " + seed);
    }
  }

  /**
   * Joints turn too little to slow a look-ahead: 13 degrees at 30 mm/s, 300 mm/s2, 0.02 mm
   * (references.md section 5).
   */
  @Test
  void smoothCurve_jointsNearlyTangent() {
    double[][] points = smooth(new Random(4), 400, 0);
    double x = points[0][0];
    double y = points[0][1];
    double heading = Double.NaN;
    for (Move move : fit(points, TOLERANCE, TOLERANCE)) {
      double chord = Math.atan2(move.y() - y, move.x() - x);
      double half = move.isArc() ? sweep(x, y, move) / 2 : 0;
      if (!Double.isNaN(heading)) {
        double turn =
            Math.toDegrees(Math.abs(Math.IEEEremainder(chord - half - heading, 2 * Math.PI)));
        assertTrue(turn < 6, "turns by " + turn + " at " + x + ", " + y);
      }
      heading = chord + half;
      x = move.x();
      y = move.y();
    }
  }

  private static double[][] smooth(Random random, int count, double noise) {
    double[][] points = new double[count][];
    double heading = random.nextDouble() * 6;
    double curvature = 0;
    double x = 100;
    double y = 100;
    double step = 0.05 + 0.1 * random.nextDouble();
    for (int i = 0; i < count; i++) {
      points[i] =
          new double[] {
            x + noise * (2 * random.nextDouble() - 1), y + noise * (2 * random.nextDouble() - 1)
          };
      if (i % 40 == 0) {
        curvature = random.nextInt(4) == 0 ? 0 : random.nextGaussian() / 3;
      }
      heading += curvature * step;
      x += step * Math.cos(heading);
      y += step * Math.sin(heading);
    }
    return points;
  }

  private static void check(
      double[][] old, List<Move> moves, double left, double right, String where) {
    Move last = moves.get(moves.size() - 1);
    assertEquals(old[old.length - 1][0], last.x(), where);
    assertEquals(old[old.length - 1][1], last.y(), where);
    List<double[]> samples = new ArrayList<>();
    double x = old[0][0];
    double y = old[0][1];
    samples.add(old[0]);
    for (Move move : moves) {
      if (move.isArc()) {
        sampleArc(x, y, move, samples, where);
      } else {
        int n = Math.max(1, (int) (Math.hypot(move.x() - x, move.y() - y) / 0.02));
        for (int i = 1; i <= n; i++) {
          samples.add(new double[] {x + (move.x() - x) * i / n, y + (move.y() - y) * i / n});
        }
      }
      x = move.x();
      y = move.y();
    }
    double[][] fresh = samples.toArray(double[][]::new);
    // New against old, with sides; and the old vertices against the new samples, whose own chords
    // err by under 0.0001.
    int at = 1;
    for (double[] p : fresh) {
      at = nearest(p, old, at);
      double off = signedDistance(p, old, at);
      String place = where + ", at " + p[0] + ", " + p[1];
      assertTrue(off <= left + 1e-4 && off >= -right - 1e-4, place + ": new path is off by " + off);
    }
    at = 1;
    for (double[] p : old) {
      at = nearest(p, fresh, at);
      double off = Math.abs(signedDistance(p, fresh, at));
      assertTrue(off <= Math.max(left, right) + 1e-4, where + ": old vertex is off by " + off);
    }
  }

  private static double sweep(double x, double y, Move arc) {
    double ax = x - arc.centreX();
    double ay = y - arc.centreY();
    double bx = arc.x() - arc.centreX();
    double by = arc.y() - arc.centreY();
    double turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    assertTrue(
        arc.kind() == Move.Kind.CLOCKWISE ? turn < 0 : turn > 0,
        "turns the other way, or over 180 degrees");
    return turn;
  }

  private static void sampleArc(
      double x, double y, Move arc, List<double[]> samples, String where) {
    double radius = Math.hypot(x - arc.centreX(), y - arc.centreY());
    double end = Math.hypot(arc.x() - arc.centreX(), arc.y() - arc.centreY());
    assertEquals(radius, end, 1e-9, where);
    assertTrue(radius >= 0.1 && radius <= 500, where + ": radius " + radius);
    // RS274/NGC 3.5.3.2: the radii at both ends may differ by 0.002 mm, here as rounded to four
    // places.
    double rounded =
        Math.hypot(round(x) - round(arc.centreX()), round(y) - round(arc.centreY()))
            - Math.hypot(
                round(arc.x()) - round(arc.centreX()), round(arc.y()) - round(arc.centreY()));
    assertTrue(Math.abs(rounded) < 0.002, where + ": radii differ by " + rounded);
    double sweep = sweep(x, y, arc);
    assertTrue(Math.abs(sweep) < Math.toRadians(171), where + ": sweep " + sweep);
    double start = Math.atan2(y - arc.centreY(), x - arc.centreX());
    int n = Math.max(2, (int) (Math.abs(sweep) * radius / 0.02));
    for (int i = 1; i <= n; i++) {
      double a = start + sweep * i / n;
      samples.add(
          new double[] {
            arc.centreX() + radius * Math.cos(a), arc.centreY() + radius * Math.sin(a)
          });
    }
  }

  private static double round(double v) {
    return Math.rint(v * 1e4) / 1e4;
  }

  /**
   * The segment of a path nearest to a point, sought around the one that was nearest to the point
   * before.
   */
  private static int nearest(double[] p, double[][] path, int around) {
    int best = around;
    for (int i = Math.max(1, around - 10); i <= Math.min(path.length - 1, around + 60); i++) {
      if (Math.abs(signedDistance(p, path, i)) < Math.abs(signedDistance(p, path, best))) {
        best = i;
      }
    }
    return best;
  }

  /** Distance to a segment of a path, positive when the point lies to its left. */
  private static double signedDistance(double[] p, double[][] path, int segment) {
    double dx = path[segment][0] - path[segment - 1][0];
    double dy = path[segment][1] - path[segment - 1][1];
    double px = p[0] - path[segment - 1][0];
    double py = p[1] - path[segment - 1][1];
    double t = Math.min(Math.max((px * dx + py * dy) / (dx * dx + dy * dy), 0), 1);
    return (dx * py - dy * px >= 0 ? 1 : -1)
        * Math.sqrt((px - t * dx) * (px - t * dx) + (py - t * dy) * (py - t * dy));
  }
}
