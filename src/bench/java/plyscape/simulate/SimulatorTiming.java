package plyscape.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.PassText;
import plyscape.gcode.Program;
import plyscape.gcode.ProgramHead;
import plyscape.grid.Box;
import plyscape.machine.Move;

/**
 * Prints how long parsing and cutting take as moves and cells grow. A wandering path over a 240 x
 * 240 panel, one move in three an arc, one in ten at a new depth.
 */
public final class SimulatorTiming {

  private SimulatorTiming() {}

  /** Runs; the argument is how often each case runs (the best counts). */
  public static void main(String[] args) {
    int repeats = args.length > 0 ? Integer.parseInt(args[0]) : 2;
    System.out.println("    moves   cell   parse s   cut s    heap MiB");
    for (int[] c :
        new int[][] {
          {500_000, 100},
          {125_000, 100},
          {250_000, 100},
          {500_000, 100},
          {500_000, 200},
          {500_000, 50}
        }) {
      String text = text(c[0]);
      double parse = 1e9;
      double cut = 1e9;
      long heap = 0;
      for (int k = 0; k < repeats; k++) {
        long t0 = System.nanoTime();
        Program program = GcodeParser.parse("t.nc", text, TwoTerraces.MACHINE, 240, 240, 9);
        long t1 = System.nanoTime();
        Box panel = new Box(0, 0, 240, 240);
        HeightField field = HeightField.uncut(panel, c[1] / 1000.0);
        Simulator.cut(
            new Setup(panel, 9, panel, TwoTerraces.MACHINE, c[1] / 1000.0),
            List.of(new Cut(program, TwoTerraces.SMALL)),
            field);
        long t2 = System.nanoTime();
        heap =
            Math.max(heap, Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory());
        parse = Math.min(parse, (t1 - t0) / 1e9);
        cut = Math.min(cut, (t2 - t1) / 1e9);
      }
      System.out.printf(
          Locale.ROOT,
          "%9d  %5.2f  %8.2f  %6.2f  %9d%n",
          c[0],
          c[1] / 1000.0,
          parse,
          cut,
          heap >> 20);
    }
  }

  /** A program of a count of moves. */
  static String text(int count) {
    Random random = new Random(7);
    List<Move> moves = new ArrayList<>();
    double x = 120;
    double y = 120;
    double z = 1;
    double heading = 0;
    moves.add(Move.rapid(x, y, -4));
    while (moves.size() < count) {
      double step = 0.1 + 0.8 * random.nextDouble();
      z = random.nextInt(10) == 0 ? 0.5 + 3 * random.nextDouble() : z;
      if (random.nextInt(3) == 0) {
        double r = 1 + 3 * random.nextDouble();
        double turn = step / r;
        double cx = x - r * Math.sin(heading);
        double cy = y + r * Math.cos(heading);
        heading += turn;
        x = cx + r * Math.sin(heading);
        y = cy - r * Math.cos(heading);
        moves.add(Move.arc(false, x, y, z, cx, cy, 1200));
      } else {
        heading += 0.4 * (random.nextDouble() - 0.5);
        x += step * Math.cos(heading);
        y += step * Math.sin(heading);
        moves.add(Move.line(x, y, z, 1200));
      }
      if (x < 8 || y < 8 || x > 232 || y > 232) {
        x = 10 + 220 * random.nextDouble();
        y = 10 + 220 * random.nextDouble();
        moves.add(Move.rapid(x, y, -4));
        z = 1;
        heading = 6.28 * random.nextDouble();
      }
    }
    return GcodeWriter.write(
        new ProgramHead(
            "timing", 240, 240, 9, TwoTerraces.MACHINE, TwoTerraces.SMALL, 4, 1, "test", List.of()),
        List.of(new PassText("wandering", moves)));
  }
}
