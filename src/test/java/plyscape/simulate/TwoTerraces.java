package plyscape.simulate;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.PassText;
import plyscape.gcode.Program;
import plyscape.gcode.ProgramHead;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;

/**
 * A small job whose right answer is known by hand: a square pocket with a round one in its middle,
 * cut by concentric rings with two tools. Panel 60 x 60, square from 10 to 50 at 1.0 mm, disk of
 * radius 12 about the middle at 2.0 mm.
 */
final class TwoTerraces {

  static final Machine MACHINE = Workshop.ROUTER;
  static final Tool LARGE = Workshop.endMill(6, 12);
  static final Tool SMALL = Workshop.END_MILL_3.with(Workshop.cutting(1200, 400, 2, 0.45));
  static final Box PANEL = new Box(0, 0, 60, 60);
  static final double THICKNESS = 9;

  private TwoTerraces() {}

  static Setup setup(double cell) {
    return new Setup(PANEL, THICKNESS, new Box(6, 6, 54, 54), MACHINE, cell);
  }

  /** Outlines; the circle has 720 corners, so it is a circle to 0.0001 mm. */
  static List<Target> targets() {
    double[] circle = new double[1440];
    for (int i = 0; i < 720; i++) {
      circle[2 * i] = 30 + 12 * Math.cos(i * Math.PI / 360);
      circle[2 * i + 1] = 30 + 12 * Math.sin(i * Math.PI / 360);
    }
    double[] square = TargetsTest.square(10, 10, 50, 50);
    return List.of(
        new Target(1, 0, new double[][] {TargetsTest.square(6, 6, 54, 54), square}),
        new Target(2, 1, new double[][] {square, circle}),
        new Target(3, 2, new double[][] {circle}));
  }

  /** The large tool's file: the square's rings, and the disk's. */
  static String large() {
    return text(
        LARGE,
        List.of(
            new PassText("pass 1: square", squareRings(3, 2.6)),
            new PassText("pass 2: disk", diskRings(9, 2.6))));
  }

  /** The small tool's: once round the square's wall, for its corners. */
  static String small() {
    List<Move> moves = new ArrayList<>();
    ring(moves, 1.5, 1200, 400);
    moves.add(Move.rapid(11.5, 11.5, -4));
    return text(SMALL, List.of(new PassText("pass 1: corners", moves)));
  }

  static String text(Tool tool, List<PassText> passes) {
    return GcodeWriter.write(
        new ProgramHead("Tarn Hollow", 60, 60, THICKNESS, MACHINE, tool, 2, 60, "test", List.of()),
        passes);
  }

  private static List<Move> squareRings(double first, double step) {
    List<Move> moves = new ArrayList<>();
    for (double in = first; in < 20; in += step) {
      ring(moves, in, 1800, 500);
    }
    moves.add(Move.line(30, 30, 1, 1800)); // whatever the last ring leaves in the middle
    moves.add(Move.rapid(30, 30, -4));
    return moves;
  }

  private static void ring(List<Move> moves, double in, double feed, double plunge) {
    double a = 10 + in;
    double b = 50 - in;
    if (moves.isEmpty()) {
      moves.add(Move.rapid(a, a, -4));
      moves.add(Move.rapid(a, a, -0.5));
      moves.add(Move.line(a, a, 1, plunge));
    } else {
      moves.add(Move.line(a, a, 1, feed));
    }
    moves.add(Move.line(b, a, 1, feed));
    moves.add(Move.line(b, b, 1, feed));
    moves.add(Move.line(a, b, 1, feed));
    moves.add(Move.line(a, a, 1, feed));
  }

  private static List<Move> diskRings(double first, double step) {
    List<Move> moves = new ArrayList<>();
    moves.add(Move.rapid(30 + first, 30, -4));
    moves.add(Move.rapid(30 + first, 30, 0.8)); // over the square's floor, which is at 1.0
    moves.add(Move.line(30 + first, 30, 2, 500));
    for (double r = first; r > 0; r -= step) {
      moves.add(Move.line(30 + r, 30, 2, 1800));
      moves.add(Move.arc(false, 30 + r, 30, 2, 30, 30, 1800));
    }
    moves.add(Move.line(30, 30, 2, 1800));
    moves.add(Move.rapid(30, 30, -4));
    return moves;
  }

  static CutResult cut(double cell, String large, String small) {
    return Simulator.run(
        setup(cell),
        List.of(new Cut(parse("01.nc", large), LARGE), new Cut(parse("02.nc", small), SMALL)),
        targets(),
        List.of(LARGE, SMALL));
  }

  static Program parse(String file, String text) {
    return GcodeParser.parse(file, text, MACHINE, 60, 60, THICKNESS);
  }
}
