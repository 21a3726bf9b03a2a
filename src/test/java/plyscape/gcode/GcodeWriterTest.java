package plyscape.gcode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Clamping;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Machine;
import plyscape.machine.Motion;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Travel;
import plyscape.machine.Workshop;

class GcodeWriterTest {

  private static final Tool TOOL = Workshop.END_MILL_3;

  private static String write(Machine machine, List<Move> moves) {
    ProgramHead header =
        new ProgramHead("Tarn Hollow", 240, 240, 9.1, machine, TOOL, 3.25, 3725, "1", List.of());
    return GcodeWriter.write(header, List.of(new PassText("pass 1", moves)));
  }

  private static List<String> body(String text) {
    List<String> lines = text.lines().toList();
    return lines.subList(lines.indexOf("(pass 1)") + 1, lines.size());
  }

  @Test
  void wholeFile_onlyChangedWords() {
    String text =
        write(
            GcodeParserTest.MACHINE,
            List.of(
                Move.rapid(10, 20, -4),
                Move.rapid(10, 20, 0.5),
                Move.line(30, 20, 0.5, 1800),
                Move.line(30, 25, 0.5, 1800),
                Move.arc(false, 25, 30, 0.5, 25, 25, 1800),
                Move.line(20, 30, 1, 600),
                Move.rapid(20, 30, -4)));
    assertTrue(text.contains("\nG17 G21 G90 G94 G54\nG0 Z4.000\nM3 S16000\n(pass 1)\n"), text);
    assertEquals(
        List.of(
            "G0 X10.000 Y20.000",
            "Z-0.500",
            "G1 X30.000 F1800",
            "Y25.000",
            "G3 X25.0000 Y30.0000 I-5.0000 J0.0000",
            "G1 X20.000 Z-1.000 F600",
            "G0 Z4.000",
            "M5",
            "M30"),
        body(text));
    assertTrue(text.contains("1 h 2 min"), text);
  }

  @Test
  void form_asciiShortLinesNoExponentNoToolChange() {
    String text = write(GcodeParserTest.MACHINE, random(new Random(3), 500));
    for (String line : text.lines().toList()) {
      assertTrue(line.length() < 80, line);
      assertTrue(line.chars().allMatch(c -> c >= 32 && c < 127), line);
      assertTrue(
          line.startsWith("(")
              || line.matches(
                  "(G\\d+ ?)*([XYZIJ]-?\\d+\\.\\d{3,4} ?)*(F\\d+(\\.\\d+)?)?|M3 S\\d+|M5|M30"),
          line);
    }
    assertFalse(text.contains("\r"));
    assertTrue(text.endsWith("\n"));
  }

  @Test
  void comments_cantEscape() {
    ProgramHead header =
        new ProgramHead(
            "Tárn (Hollow)\nG0 Z-50\u0007 \u4e2d % " + "very long name ".repeat(12),
            240,
            240,
            9,
            GcodeParserTest.MACHINE,
            Workshop.END_MILL_3.named("evil)M30(\r\n"),
            1,
            1,
            "1",
            List.of());
    String text =
        GcodeWriter.write(
            header, List.of(new PassText("MSG, stop here", List.of(Move.rapid(1, 1, -4)))));
    assertTrue(text.startsWith("(Tarn [Hollow] G0 Z-50  ? _ very long name"), text);
    assertTrue(text.contains("evil]M30["), text);
    assertTrue(text.contains("(- MSG, stop here)"), text);
    assertEquals(
        2, GcodeParser.parse("t", text, GcodeParserTest.MACHINE, 240, 240, 9).blocks().size());
  }

  @Test
  void fullCircle_isSplitInHalves() {
    List<Move> circle =
        List.of(
            Move.rapid(15, 10, -4),
            Move.line(15, 10, 1, 300),
            Move.arc(true, 15, 10, 2, 10, 10, 900));
    List<String> lines = body(write(GcodeParserTest.MACHINE, circle));
    assertEquals("G2 X5.0000 Y10.0000 Z-1.500 I-5.0000 J0.0000 F900", lines.get(2));
    assertEquals("X15.0000 Y10.0000 Z-2.000 I5.0000 J0.0000", lines.get(3));
  }

  @Test
  void speckOfAnArc_doesntTurnIntoACircle() {
    // 0.00004 mm of arc: its rounded ends coincide or swap, which would read as a full turn.
    double a = 4e-5 / 5;
    List<Move> moves =
        List.of(
            Move.rapid(15.00004, 10, -4),
            Move.line(15.00004, 10, 1, 300),
            Move.arc(false, 10 + 5.00004 * Math.cos(a), 10 + 5.00004 * Math.sin(a), 1, 10, 10, 900),
            Move.line(20, 10, 1, 900));
    List<String> lines = body(write(GcodeParserTest.MACHINE, moves));
    assertTrue(lines.stream().noneMatch(l -> l.contains("G3")), lines.toString());
  }

  @Test
  void zeroPlaces() {
    Machine machine =
        Workshop.withoutSpinUp(Workshop.router(Machine.Zero.UPPER_RIGHT, Machine.ZeroZ.BOTTOM));
    List<String> lines =
        body(write(machine, List.of(Move.rapid(10, 20, -4), Move.line(10, 20, 1.1, 100))));
    assertEquals("G0 X-230.000 Y-220.000", lines.get(0));
    assertEquals("G1 Z8.000 F100", lines.get(1));
  }

  @Test
  void arcFirst_isRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> write(GcodeParserTest.MACHINE, List.of(Move.arc(true, 1, 1, 1, 0, 0, 100))));
  }

  /**
   * What is written reads back to the same path: ends, centres and depths within half a last place,
   * sweeps alike.
   */
  @Test
  void randomMoves_comeBack() {
    for (int seed = 1; seed <= 100; seed++) {
      Random random = new Random(seed);
      Machine machine =
          Workshop.router(Machine.Zero.values()[seed % 5], Machine.ZeroZ.values()[seed % 2]);
      List<Move> planned = random(random, 200);
      String text = write(machine, planned);
      Program program = GcodeParser.parse("t", text, machine, 240, 240, 9.1);
      List<Move> read = program.moves();
      double tolerance = 0.0015 * planned.size();
      assertEquals(length(program, planned), length(program, read), tolerance, "seed " + seed);
      int at = 0;
      for (Move m : planned) { // each planned end is met, in order
        while (at < read.size() && far(m, read.get(at))) {
          at++;
        }
        assertTrue(at < read.size(), "seed " + seed + ": no move ends at " + m);
      }
    }
  }

  /** Length seen from above, from the program's start: a circle lost or gained would show. */
  private static double length(Program program, List<Move> moves) {
    double x = program.startX();
    double y = program.startY();
    double length = 0;
    for (Move m : moves) {
      length +=
          m.isArc()
              ? ArcGeometry.of(x, y, m.depth(), m).length()
              : Math.hypot(m.x() - x, m.y() - y);
      x = m.x();
      y = m.y();
    }
    return length;
  }

  @Test
  void head_readsBackToToolAndMachine() {
    Tool tool =
        new Tool(
            "a rather long name, flat, for an end mill that makes its line break",
            new Form(Tool.Shape.TAPERED, 6, 22.5, 3, 0.5, 7.5, Tool.Spiral.UNSAID),
            new CuttingData(18_000, 1800.5, 500, 2, 0.45),
            new Clamping(6.35, 31, 24));
    for (Machine.Zero zero : Machine.Zero.values()) {
      Machine machine =
          Workshop.router(zero, Machine.ZeroZ.values()[zero.ordinal() % 2])
              .with(new Travel(310, 290, 80))
              .with(new Motion(4000, 300, 0.02, 0));
      String text =
          GcodeWriter.write(
              new ProgramHead("t", 240, 200, 9, machine, tool, 1, 1, "1", List.of()), List.of());
      HeadReader head = HeadReader.read(text);
      assertEquals(machine, head.machine().orElseThrow());
      assertEquals(tool, head.tool().orElseThrow());
    }
    assertEquals(java.util.Optional.empty(), HeadReader.read("(tool: x)\nG0 X1\nM30").tool());
  }

  private static boolean far(Move a, Move b) {
    return Math.abs(a.x() - b.x()) > 0.000501
        || Math.abs(a.y() - b.y()) > 0.000501
        || Math.abs(a.depth() - b.depth()) > 0.000501;
  }

  private static List<Move> random(Random random, int count) {
    List<Move> moves = new ArrayList<>();
    double x = 120;
    double y = 120;
    double depth = -4;
    moves.add(Move.rapid(x, y, depth));
    for (int i = 1; i < count; i++) {
      int kind = random.nextInt(4);
      double size = Math.pow(10, 4 * random.nextDouble() - 3);
      double angle = 2 * Math.PI * random.nextDouble();
      depth = random.nextInt(3) == 0 ? 3 * random.nextDouble() : depth;
      if (kind < 2) {
        x = Math.min(230, Math.max(10, x + size * Math.cos(angle)));
        y = Math.min(230, Math.max(10, y + size * Math.sin(angle)));
        moves.add(kind == 0 ? Move.rapid(x, y, depth) : Move.line(x, y, depth, 1800));
      } else {
        double sweep = random.nextInt(5) == 0 ? 2 * Math.PI : 2 * Math.PI * random.nextDouble();
        double cx = x - size * Math.cos(angle);
        double cy = y - size * Math.sin(angle);
        double end = angle + (kind == 2 ? -sweep : sweep);
        if (sweep < 2 * Math.PI) {
          x = cx + size * Math.cos(end);
          y = cy + size * Math.sin(end);
        }
        moves.add(Move.arc(kind == 2, x, y, depth, cx, cy, 1500));
      }
    }
    return moves;
  }
}
