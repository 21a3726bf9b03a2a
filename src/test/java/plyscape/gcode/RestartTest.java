package plyscape.gcode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import plyscape.machine.Move;

class RestartTest {

  private static Program program(String body) {
    return GcodeParser.parse(
        "p.nc",
        "M3 S9000\nG0 Z4\n" + body + "G0 Z4\nM5\nM30\n",
        GcodeParserTest.MACHINE,
        240,
        240,
        9);
  }

  @Test
  void longCut_rampsOverWhatIsCut() {
    StringBuilder body = new StringBuilder("G0 X10 Y10\nZ0.5\nG1 Z-1 F300\n");
    for (int i = 1; i <= 20; i++) {
      body.append("G1 X").append(10 + 5 * i).append(" F1200\n");
    }
    Restart restart =
        Restart.of(
            program(body.toString()),
            5 + 16,
            GcodeParserTest.MACHINE,
            UncutFace.FLAT); // the move to X90
    // Down 1 mm and the half over the face at 3 degrees: 1.5 / tan 3 = 28.6 mm, so six moves of 5
    // mm.
    assertEquals(30, restart.rampMm(), 1e-9);
    assertEquals(55, restart.x(), 1e-9);
    assertEquals(Move.rapid(55, 10, -4), restart.approach().get(0));
    assertEquals(Move.rapid(55, 10, -0.5), restart.approach().get(1));
    double x = 55;
    double depth = -0.5;
    for (Move m : restart.approach().subList(2, restart.approach().size())) {
      assertTrue(
          (m.depth() - depth) / (m.x() - x) <= Math.tan(Math.toRadians(3)) + 1e-9, m.toString());
      assertTrue(m.depth() <= 1, m.toString());
      x = m.x();
      depth = m.depth();
    }
    assertEquals(85, x, 1e-9);
    assertEquals(1, depth, 1e-9);
    assertEquals(90, restart.rest().get(0).x(), 1e-9);
  }

  @Test
  void shortCut_takesItsOwnWayDown() {
    Restart restart =
        Restart.of(
            program("G0 X10 Y10\nZ0.5\nG1 Z-1 F300\nX15 F1200\nX20\nX25\n"),
            8,
            GcodeParserTest.MACHINE,
            UncutFace.FLAT);
    assertEquals(0, restart.rampMm());
    assertEquals(10, restart.x(), 1e-9);
    assertEquals(
        1, restart.approach().get(1).depth(), 1e-9); // the plunge of the program, at its feed
    assertEquals(300, restart.approach().get(1).feedMmPerMin());
  }

  @Test
  void cutThatBeganInsideThePocket_isReachedSlowly() {
    Restart restart =
        Restart.of(
            program("G0 X10 Y10\nZ0.5\nG1 Z-1 F300\nX15 F1200\nG0 X12\nG1 Z-2 F200\nX20\nX25\n"),
            11,
            GcodeParserTest.MACHINE,
            UncutFace.FLAT);
    assertEquals(12, restart.x(), 1e-9);
    assertEquals(Move.rapid(12, 10, -4), restart.approach().get(0));
    assertEquals(Move.rapid(12, 10, -0.5), restart.approach().get(1));
    assertEquals(Move.line(12, 10, 1, 200), restart.approach().get(2));
  }
}
