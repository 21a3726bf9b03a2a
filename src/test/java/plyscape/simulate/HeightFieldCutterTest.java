package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.gcode.Program;
import plyscape.grid.Box;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.simulate.stroke.Strokes;

/**
 * Closed forms are derived in each test; the random ones are held against stepping along the path
 * in tiny steps.
 */
class HeightFieldCutterTest {

  private static final Box PANEL = new Box(0, 0, 80, 60);

  static Tool tool(Tool.Shape shape, double diameter) {
    return shape == Tool.Shape.TAPERED
        ? new Tool("t", Workshop.tapered(diameter, 20, 0.5, 15), Workshop.END_MILL_3.cutting())
        : Workshop.cutter("t", shape, diameter, 20);
  }

  static Program program(double x, double y, double depth, List<Move> moves) {
    List<Program.Block> blocks = new ArrayList<>();
    for (Move move : moves) {
      blocks.add(new Program.Block(blocks.size() + 1, move, true));
    }
    return new Program("p", x, y, depth, blocks, List.of(), List.of());
  }

  private static HeightField cut(
      double cell, Tool tool, double x, double y, double depth, Move... moves) {
    HeightField field = HeightField.uncut(PANEL, cell);
    new HeightFieldCutter(field, tool, 0, Rim.NONE, null, 0)
        .cut(Strokes.of(program(x, y, depth, List.of(moves))));
    return field;
  }

  private static double area(HeightField field, double atLeast) {
    int n = 0;
    for (float d : field.depth()) {
      n += d >= atLeast ? 1 : 0;
    }
    return n * field.cellAreaMm2();
  }

  @Test
  void capsule_flatCutterOnALine() {
    HeightField field =
        cut(0.1, tool(Tool.Shape.FLAT, 6), 20, 20, 1.25, Move.line(60, 35, 1.25, 600));
    double length = Math.hypot(40, 15);
    assertEquals(6 * length + 9 * Math.PI, area(field, 1.25), 0.5);
    for (int row = 0; row < field.frame().rows(); row++) {
      for (int column = 0; column < field.frame().columns(); column++) {
        double wx = field.frame().centreX(column) - 20;
        double wy = field.frame().centreY(row) - 20;
        double t = Math.max(0, Math.min(1, (wx * 40 + wy * 15) / (length * length)));
        double d = Math.hypot(wx - 40 * t, wy - 15 * t);
        if (Math.abs(d - 3) > 1e-9) {
          assertEquals(d < 3 ? 1.25 : 0, field.at(column, row), 1e-6);
        }
      }
    }
  }

  @Test
  void ring_flatCutterOnAFullCircle() {
    HeightField field =
        cut(0.1, tool(Tool.Shape.FLAT, 4), 55, 30, 2, Move.arc(true, 55, 30, 2, 40, 30, 600));
    assertEquals(Math.PI * (17 * 17 - 13 * 13), area(field, 2), 0.5);
    assertEquals(0, field.at(400, 300)); // the centre stays
  }

  @Test
  void sector_flatCutterOnAnArc_bothWays() {
    for (boolean clockwise : new boolean[] {false, true}) {
      double sweep = Math.toRadians(100);
      double x = 40 + 15 * Math.cos(clockwise ? -sweep : sweep);
      double y = 30 + 15 * Math.sin(clockwise ? -sweep : sweep);
      HeightField field =
          cut(0.1, tool(Tool.Shape.FLAT, 4), 55, 30, 2, Move.arc(clockwise, x, y, 2, 40, 30, 600));
      assertEquals(sweep / 2 * (17 * 17 - 13 * 13) + 4 * Math.PI, area(field, 2), 0.3);
    }
  }

  @Test
  void ballInAGroove_hasACircularSection() {
    double r = 1.5;
    HeightField field = cut(0.05, tool(Tool.Shape.BALL, 3), 10, 30, 1, Move.line(70, 30, 1, 600));
    for (int row = 0; row < field.frame().rows(); row++) {
      double d = Math.abs(field.frame().centreY(row) - 30);
      double expected = d > r ? 0 : Math.max(0, 1 - (r - Math.sqrt(r * r - d * d)));
      assertEquals(expected, field.at(800, row), 1e-6);
    }
    // Width of the groove at the face: 2 sqrt(r^2 - (r - 1)^2); whole rows count, so it may miss by
    // a row's area.
    assertEquals(2 * Math.sqrt(2) * 60 + Math.PI * 2, area(field, 1e-9), 60 * 0.05);
  }

  @Test
  void taperedGroove_hasStraightFlanks() {
    HeightField field =
        cut(0.05, tool(Tool.Shape.TAPERED, 6), 10, 30, 3, Move.line(70, 30, 3, 600));
    double tip = 0.25;
    double angle = Math.toRadians(15);
    for (int row = 0; row < field.frame().rows(); row++) {
      double d = Math.abs(field.frame().centreY(row) - 30);
      // A cone that touches a ball of radius tip: its apex lies tip / sin(angle) - tip below the
      // ball's lowest point.
      double cone = 3 + tip / Math.sin(angle) - tip - d / Math.tan(angle);
      double ball = d < tip ? 3 - tip + Math.sqrt(tip * tip - d * d) : 0;
      double expected = d > 3 ? 0 : Math.max(0, d <= tip * Math.cos(angle) ? ball : cone);
      assertEquals(expected, field.at(800, row), 1e-6, "row " + row);
    }
  }

  @Test
  void ramp_flatCutter_deepestAtTheLowEnd() {
    // Along the middle of a ramp the cutter's disk reaches r ahead: depth at x is that of the tip
    // at x + r, at most the end's.
    HeightField field = cut(0.1, tool(Tool.Shape.FLAT, 6), 20, 30, 0, Move.line(60, 30, 2, 600));
    for (int column = 200; column < 600; column += 7) {
      double x = field.frame().centreX(column);
      double aside = 0.05; // the nearest row of centres lies half a cell off the line
      double ahead = Math.sqrt(9 - aside * aside);
      assertEquals(2 * Math.min(1, (x - 20 + ahead) / 40), field.at(column, 300), 1e-6);
    }
  }

  @Test
  void randomStrokes_agreeWithSteppingAlong() {
    for (int seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      Tool tool = tool(Tool.Shape.values()[seed % 3], 1 + 5 * random.nextDouble());
      double x0 = 25 + 30 * random.nextDouble();
      double y0 = 20 + 20 * random.nextDouble();
      double z0 = 2 * random.nextDouble();
      double z1 = random.nextInt(3) == 0 ? z0 : 2 * random.nextDouble();
      Move move;
      if (random.nextBoolean()) {
        double size = random.nextInt(4) == 0 ? 0 : 12;
        move =
            Move.line(
                x0 + size * (random.nextDouble() - 0.5),
                y0 + size * (random.nextDouble() - 0.5),
                z1,
                600);
      } else {
        double radius = 0.3 + 5 * random.nextDouble();
        double angle = 2 * Math.PI * random.nextDouble();
        double cx = x0 - radius * Math.cos(angle);
        double cy = y0 - radius * Math.sin(angle);
        boolean clockwise = random.nextBoolean();
        double turn =
            (random.nextInt(4) == 0 ? 2 * Math.PI : 2 * Math.PI * random.nextDouble())
                * (clockwise ? -1 : 1);
        boolean full = Math.abs(turn) >= 2 * Math.PI;
        move =
            Move.arc(
                clockwise,
                full ? x0 : cx + radius * Math.cos(angle + turn),
                full ? y0 : cy + radius * Math.sin(angle + turn),
                z1,
                cx,
                cy,
                600);
      }
      HeightField field = cut(0.25, tool, x0, y0, z0, move);
      double[][] path = path(x0, y0, z0, move);
      double[] expected = step(field, tool, path);
      for (int i = 0; i < expected.length; i++) {
        if (Math.abs(field.depth()[i] - expected[i]) < 1e-5) {
          continue;
        }
        String where = "seed " + seed + " cell " + i + " " + move + " " + tool.shape();
        assertTrue(field.depth()[i] > expected[i], where);
        if (field.depth()[i]
            > expected[i] + 0.01) { // only right at the edge may stepping miss a cell
          int column = i % field.frame().columns();
          int row = i / field.frame().columns();
          double slack = stepDistance(field, tool, path, column, row) - tool.radiusMm();
          assertEquals(0, slack, 0.01, where + ": " + field.depth()[i] + " for " + expected[i]);
        }
      }
    }
  }

  private static final double COS = Math.cos(Math.toRadians(15));
  private static final double SIN = Math.sin(Math.toRadians(15));
  private static final int STEPS = 500;

  private static double[][] path(double x0, double y0, double z0, Move move) {
    double[][] points = new double[STEPS + 1][];
    for (int k = 0; k <= STEPS; k++) {
      double t = (double) k / STEPS;
      double x = x0 + (move.x() - x0) * t;
      double y = y0 + (move.y() - y0) * t;
      if (move.isArc()) {
        ArcGeometry arc = ArcGeometry.of(x0, y0, z0, move);
        x = move.centreX() + arc.radius() * Math.cos(arc.startAngle() + arc.sweep() * t);
        y = move.centreY() + arc.radius() * Math.sin(arc.startAngle() + arc.sweep() * t);
      }
      points[k] = new double[] {x, y, z0 + (move.depth() - z0) * t};
    }
    return points;
  }

  private static double[] step(HeightField field, Tool tool, double[][] path) {
    double[] depth = new double[field.depth().length];
    double r = tool.radiusMm();
    for (double[] p : path) {
      for (int row = (int) ((p[1] - r) * 4) - 1; row <= (p[1] + r) * 4; row++) {
        for (int column = (int) ((p[0] - r) * 4) - 1; column <= (p[0] + r) * 4; column++) {
          double d =
              Math.hypot(field.frame().centreX(column) - p[0], field.frame().centreY(row) - p[1]);
          if (d <= r) {
            double up =
                switch (tool.shape()) {
                  case FLAT -> 0;
                  case BALL -> r - Math.sqrt(r * r - d * d);
                  case TAPERED ->
                      d <= 0.25 * COS
                          ? 0.25 - Math.sqrt(0.0625 - d * d)
                          : d * COS / SIN - (0.25 / SIN - 0.25);
                };
            int i = row * field.frame().columns() + column;
            depth[i] = Math.max(depth[i], p[2] - up);
          }
        }
      }
    }
    return depth;
  }

  private static double stepDistance(
      HeightField field, Tool tool, double[][] path, int column, int row) {
    double best = 1e9;
    for (double[] p : path) {
      double d =
          Math.hypot(field.frame().centreX(column) - p[0], field.frame().centreY(row) - p[1]);
      best =
          Math.min(
              best, Math.abs(d - tool.radiusMm()) < Math.abs(best - tool.radiusMm()) ? d : best);
    }
    return best;
  }
}
