package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import plyscape.gcode.GcodeParser;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.simulate.stroke.Strokes;

/** Ways down of a cutter that may plunge at 200 mm/min. */
class PlungeCheckTest {

  private static final Tool CUTTER = Workshop.END_MILL_3.with(Workshop.cutting(1200, 200, 2, 0.45));

  private static List<PlungeCheck.Fast> check(String lines) {
    String text = "G17 G21 G90 G94 G54\nM3 S16000\nG0 X10 Y15 Z0\n" + lines + "\nM5\nM30\n";
    Cut cut = new Cut(GcodeParser.parse("p.nc", text, Workshop.ROUTER, 30, 30, 9), CUTTER);
    return PlungeCheck.of(cut, Strokes.of(cut.program()), 0);
  }

  /** A ramp to 1 mm in pieces of a length and a slope, Z rounded as programs have it. */
  private static String ramp(double pieceMm, double slope, double feed) {
    StringBuilder out = new StringBuilder("G1 X10 F" + (int) feed);
    int n = (int) (1 / (pieceMm * slope));
    for (int k = 1; k <= n; k++) {
      out.append(
          String.format(Locale.ROOT, "\nX%.3f Z%.3f", 10 + k * pieceMm, -k * pieceMm * slope));
    }
    return out.toString();
  }

  @Test
  void straightDown() {
    assertTrue(check("G1 Z-1 F200").isEmpty());
    PlungeCheck.Fast fast = check("G1 Z-1 F300").get(0);
    assertEquals(300, fast.mmPerMin(), 1e-9);
    assertEquals(4, fast.stroke().line());
  }

  @Test
  void rampAtItsLimit_passesHoweverShortItsPieces() {
    double slope = Math.tan(Math.toRadians(5));
    double feed = 200 / Math.sin(Math.toRadians(5)); // Z share exactly the plunge
    for (double piece : new double[] {0.02, 0.05, 0.11, 0.3, 1, 5}) {
      assertTrue(check(ramp(piece, slope, feed)).isEmpty(), "pieces of " + piece);
      assertEquals(
          200 * 1.2,
          check(ramp(piece, slope, feed * 1.2)).get(0).mmPerMin(),
          12,
          "pieces of " + piece);
    }
  }

  @Test
  void plungeInTinySteps_isOne() {
    StringBuilder steps = new StringBuilder("G1 Z0 F900");
    for (int k = 1; k <= 300; k++) {
      steps.append(String.format(Locale.ROOT, "\nZ%.3f", -k * 0.001));
    }
    assertEquals(900, check(steps.toString()).get(0).mmPerMin(), 1e-6);
  }

  @Test
  void downThroughAirOrUp_isNone() {
    assertTrue(check("G0 Z4\nG1 Z0 F3000\nZ-1 F150\nZ0 F3000").isEmpty());
  }
}
