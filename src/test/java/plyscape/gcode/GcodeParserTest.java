package plyscape.gcode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plyscape.fault.InputFault;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Workshop;

/**
 * Section numbers are those of NISTIR 6556 (2000), The NIST RS274/NGC Interpreter, as quoted in
 * references.md section 1.
 */
class GcodeParserTest {

  static final Machine MACHINE = Workshop.withoutSpinUp(Workshop.ROUTER);

  private static Program parse(String text) {
    return GcodeParser.parse("test.nc", text, MACHINE, 240, 240, 9);
  }

  private static List<Move> moves(String text) {
    return parse(text).moves();
  }

  private static Move last(String lines) {
    List<Move> moves = moves("F600\n" + lines + "\nM30\n");
    return moves.get(moves.size() - 1);
  }

  @Test
  void caseAndBlanksDontMatter_3_3() {
    assertEquals(last("G0 X0.1234 Y7"), last("g0x +0. 12 34y 7"));
    assertEquals(0.1234, last("g0x +0. 12 34y 7").x());
  }

  @Test
  void workedArc_3_5_3_2() {
    Move arc = last("G1 X7 Y7\nG17 G2 X10 Y16 I3 J4");
    assertEquals(Move.Kind.CLOCKWISE, arc.kind());
    assertEquals(10, arc.centreX());
    assertEquals(11, arc.centreY());
    assertEquals(5, ArcGeometry.of(7, 7, 0, arc).radius(), 1e-12);
    assertTrue(ArcGeometry.of(7, 7, 0, arc).sweep() < 0);
  }

  @Test
  void arcByRadius_bothSigns_3_5_3_1() {
    // Quarter and three-quarter circles of radius 5 from (5, 0): centres known without the
    // program's formula.
    Move quarter = last("G1 X5 Y0\nG3 X0 Y5 R5");
    assertEquals(0, quarter.centreX(), 1e-12);
    assertEquals(0, quarter.centreY(), 1e-12);
    Move rest = last("G1 X5 Y0\nG3 X0 Y5 R-5");
    assertEquals(5, rest.centreX(), 1e-12);
    assertEquals(5, rest.centreY(), 1e-12);
    assertEquals(1.5 * Math.PI, ArcGeometry.of(5, 0, 0, rest).sweep(), 1e-12);
    Move clockwise = last("G1 X5 Y0\nG2 X0 Y5 R5");
    assertEquals(5, clockwise.centreX(), 1e-12);
    assertEquals(-0.5 * Math.PI, ArcGeometry.of(5, 0, 0, clockwise).sweep(), 1e-12);
  }

  @Test
  void fullCircle_endEqualsStart_3_5_3_2() {
    Move circle = last("G1 X5 Y0\nG2 X5 I-5");
    assertEquals(-2 * Math.PI, ArcGeometry.of(5, 0, 0, circle).sweep(), 1e-12);
  }

  @Test
  void helix_depthEvenlyWithTheAngle() {
    Move helix = last("G1 X5 Y0 Z-1\nG3 X-5 Y0 I-5 Z-2");
    assertEquals(2, helix.depth());
  }

  @Test
  void inchesAndRelative() {
    Move move = last("G20 G91 F10\nG1 X1 Y.5\nX1 Z-.1");
    assertEquals(50.8, move.x(), 1e-12);
    assertEquals(12.7, move.y(), 1e-12);
    assertEquals(2.54 - 4, move.depth(), 1e-12);
    assertEquals(254, move.feedMmPerMin(), 1e-12);
  }

  @Test
  void zeroPlaces_turnToPanelCoordinates() {
    Machine centre = Workshop.router(Machine.Zero.CENTRE, Machine.ZeroZ.BOTTOM);
    Move move = GcodeParser.parse("t", "G0 X-20 Y30 Z8\nM2", centre, 240, 200, 9.1).moves().get(0);
    assertEquals(100, move.x());
    assertEquals(130, move.y());
    assertEquals(1.1, move.depth(), 1e-12);
    Machine right = Workshop.router(Machine.Zero.UPPER_RIGHT, Machine.ZeroZ.TOP);
    move = GcodeParser.parse("t", "G0 X-20 Y-30 Z8\nM2", right, 240, 200, 9.1).moves().get(0);
    assertEquals(220, move.x());
    assertEquals(170, move.y());
    assertEquals(-8, move.depth());
  }

  @Test
  void spindle_m5BesideAMotionStopsFirst_3_8() {
    List<Program.Block> blocks =
        parse("F100\nM3 S1000 G1 X1\nX2\nX3 M5\nX4\nM3\nX5\nS0\nX6\nM30").blocks();
    boolean[] expected = {true, true, false, false, true, false};
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i], blocks.get(i).spindleOn(), "block " + i);
    }
  }

  @Test
  void percentFrame_endsWithoutM30_3_1() {
    assertEquals(1, moves("%\nG0 X1\n%\nwhatever follows\n").size());
    assertEquals(1, moves("G0 X1\nM30\nwhatever follows\n").size());
    assertThrows(InputFault.class, () -> parse("G0 X1\n"));
  }

  @Test
  void lineNumbersCommentsAndNumbers() {
    assertEquals(1, last("N99999 G0 (here) X1 (MSG, there)").x());
    assertEquals(-0.5, last("G0 X-.5").x());
    assertEquals(3, last("G0 X3.").x());
    assertEquals(0.30000000000000004, last("G0 X0.30000000000000004").x());
  }

  @Test
  void lineOfEachBlock_countsEmptyAndWindowsLines() {
    Program program = parse("\r\n\r\nG0 X1\r\n(x)\r\nY2\r\nM30\r\n");
    assertEquals(3, program.blocks().get(0).line());
    assertEquals(5, program.blocks().get(1).line());
    assertEquals(1, program.through(4).blocks().size());
  }

  @Test
  void odditiesAreTold() {
    assertEquals(2, parse("M4 S10\nM0\nG0 X1\nM30").problems().size());
    assertFalse(parse("M3 S10\nG0 X1\nM30").problems().size() > 0);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "G1 X1E-4         | 2:6 | letter E",
        "G0 X1 X2         | 2:7 | second X",
        "G0 G1 X1         | 2:4 | G1 beside G0",
        "M3 M5            | 2:4 | M5 beside M3",
        "G0               | 2:1 | without X, Y or Z",
        "G0 X             | 2:4 | without a number",
        "G0 X1.2.3        | 2:8 | '.'",
        "(open            | 2:1 | isn't closed",
        "(a (b) )         | 2:4 | inside a comment",
        "G18              | 2:1 | G18",
        "G41 D1           | 2:1 | G41",
        "G55              | 2:1 | G55",
        "G81 X1 Z-1 R1    | 2:1 | G81",
        "G28              | 2:1 | G28",
        "M6 T2            | 2:1 | M6",
        "G93              | 2:1 | G93",
        "G0 X#1           | 2:5 | '#'",
        "G0 X1 ; note     | 2:7 | ';'",
        "/G0 X1           | 2:1 | block delete",
        "N100000 G0 X1    | 2:1 | line number",
        "G0 N1 X1         | 2:4 | line number",
        "G0.00011 X1      | 2:1 | code",
        "G1.5 X1          | 2:1 | code",
        "G0 A90           | 2:4 | letter A",
        "X5               | 2:1 | before any motion",
        "G1 X5            | 2:1 | without a feed",
        "G1 X5 I1 F1      | 2:7 | I without",
        "I5               | 2:1 | I without",
        "G2 I5 F1         | 2:1 | without X, Y or Z",
        "G2 X1 F1         | 2:1 | without I and J",
        "G2 X0 R5 F1      | 2:7 | ends where it starts",
        "G2 X20 R5 F1     | 2:8 | radius",
        "G2 X9 I5 F1      | 2:1 | radius is 5.0000",
        "G2 X9 I4.5 R2 F1 | 2:12 | R beside I",
        "G4               | 2:1 | seconds",
        "G1 X1 P1 F1      | 2:7 | P without",
        "F-1              | 2:1 | negative feed",
        "S-1              | 2:1 | negative spindle",
        "G0 X9999999      | 2:1 | kilometre",
        "M3 M8 M48 M0 M1  | 2:14 | four M words",
      })
  void faults_haveLineAndColumn(String line, String place, String words) {
    InputFault fault = assertThrows(InputFault.class, () -> parse("(first)\n" + line + "\nM30\n"));
    assertTrue(fault.getMessage().startsWith("test.nc:" + place + ":"), fault.getMessage());
    assertTrue(fault.getMessage().contains(words), fault.getMessage());
  }

  @Test
  void arcRadius_toleranceOfTheStandard() {
    assertEquals(1, moves("F1\nG3 X9.998 I5\nM2").size()); // radii 5 and 4.998
    assertThrows(InputFault.class, () -> moves("F1\nG3 X9.997 I5\nM2"));
    assertEquals(1, moves("G20 F1\nG3 X0.3998 I.2\nM2").size()); // 0.0002 inch
    assertThrows(InputFault.class, () -> moves("G20 F1\nG3 X0.3997 I.2\nM2"));
  }

  @Test
  void longLine_isRefused_3_3() {
    InputFault fault = assertThrows(InputFault.class, () -> parse("(" + "x".repeat(300) + ")\nM2"));
    assertTrue(fault.getMessage().contains("256"), fault.getMessage());
  }
}
