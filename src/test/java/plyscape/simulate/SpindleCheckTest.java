package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.PassText;
import plyscape.gcode.Program;
import plyscape.gcode.ProgramHead;
import plyscape.gcode.SpindleStart;
import plyscape.grid.Box;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Times;
import plyscape.machine.Workshop;

/** The router's spindle takes 5 s to its speed. */
class SpindleCheckTest {

  private static final Box PANEL = new Box(0, 0, 30, 30);

  private static List<Verification.Collision> check(String text) {
    Setup setup = new Setup(PANEL, 9, PANEL, Workshop.ROUTER, 0.2);
    Cut cut = new Cut(parse(text), Workshop.END_MILL_3);
    return Simulator.cut(setup, List.of(cut), HeightField.uncut(PANEL, 0.2));
  }

  private static Program parse(String text) {
    return GcodeParser.parse("p.nc", text, Workshop.ROUTER, 30, 30, 9);
  }

  private static String program(String... lines) {
    return "G17 G21 G90 G94 G54\nM3 S16000\n" + String.join("\n", lines) + "\nG0 Z4\nM5\nM30\n";
  }

  private static String written() {
    List<Move> moves =
        List.of(
            Move.rapid(10, 10, -4),
            Move.rapid(10, 10, -0.2),
            Move.line(10, 10, 1, 300),
            Move.line(20, 10, 1, 900),
            Move.rapid(20, 10, -4));
    return GcodeWriter.write(
        new ProgramHead(
            "t", 30, 30, 9, Workshop.ROUTER, Workshop.END_MILL_3, 1, 60, "test", List.of()),
        List.of(new PassText("pass", moves)));
  }

  @Test
  void straightIntoTheWood_isTooSoon() {
    Verification.Collision found = check(program("G0 X10 Y10", "Z0.2", "G1 Z-1 F300")).get(0);
    assertEquals(5, found.line());
    assertTrue(found.what().startsWith("cuts 0."), found.what());
    assertTrue(found.what().contains("takes 5.0 s to its speed"), found.what());
  }

  @Test
  void slowThroughTheAir_isInTime_fasterIsNot() {
    String[] slow = {"G0 X10 Y10 Z3", "G1 Z2 F12", "G0 Z0.2", "G1 Z-1 F300"};
    assertTrue(check(program(slow)).isEmpty());
    slow[1] = "G1 Z2 F15"; // 4 s
    assertEquals(1, check(program(slow)).size());
  }

  @Test
  void switchedOnAgain_takesItsTimeAgain() {
    String[] lines = {
      "G0 X10 Y10 Z3",
      "G1 Z2 F12",
      "G0 Z0.2",
      "G1 Z-1 F300",
      "G0 Z3",
      "M5",
      "Z4",
      "M3",
      "X20",
      "G1 Z-1"
    };
    Verification.Collision found = check(program(lines)).get(0);
    assertEquals(12, found.line());
  }

  @Test
  void writtenProgram_waitsInTheAir_atItsFirstEntry() {
    String text = written();
    assertTrue(text.contains("\nG0 X10.000 Y10.000\nG1 Z3.000 F12\n(pass)\nG0 Z0.200\n"), text);
    assertTrue(check(text).isEmpty());
    assertEquals(1, check(text.replace("G1 Z3.000 F12\n", "")).size());
  }

  @Test
  void secondsOfTheStart_areToldApart() {
    Program program = parse(written());
    Times times =
        new MotionModel(Workshop.ROUTER)
            .times(program.startX(), program.startY(), program.startDepth(), program.moves());
    assertEquals(5, SpindleStart.seconds(program, times), 0.01);
    Program without = parse(written().replace("G1 Z3.000 F12\n", ""));
    assertEquals(-1, SpindleStart.block(without));
  }
}
