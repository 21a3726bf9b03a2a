package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.gcode.GcodeParser;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Workshop;

/** Rapids over a face that is flat to 0.3 mm; a pocket 10 mm wide is cut from X 10 to 20. */
class RapidOverFaceTest {

  private static final Machine ROUTER = Workshop.withoutSpinUp(Workshop.ROUTER);

  private static List<Verification.Collision> check(double flatness, String... lines) {
    String text =
        "G17 G21 G90 G94 G54\nM3 S16000\nG0 X11.5 Y15 Z1\n"
            + "G1 Z-1 F100\nX18.5 F1200\nG0 Z4\n"
            + String.join("\n", lines)
            + "\nG0 Z4\nM5\nM30\n";
    Box panel = new Box(0, 0, 30, 30);
    Setup setup = new Setup(panel, 9, 0, flatness, panel, ROUTER, 0.1, null);
    Cut cut = new Cut(GcodeParser.parse("p.nc", text, ROUTER, 30, 30, 9), Workshop.END_MILL_3);
    return Simulator.cut(setup, List.of(cut), HeightField.uncut(panel, 0.1));
  }

  @Test
  void nearerThanTheFlatness_isNamed() {
    Verification.Collision found = check(0.3, "G0 X5 Y5", "Z0.2", "X25").get(0);
    assertEquals(8, found.line());
    assertEquals(
        "a rapid nearer to the face than its flatness: 0.200 mm over it, flat to 0.3",
        found.what());
    assertEquals(2, check(0.3, "G0 X5 Y5", "Z0.2", "X25").size());
  }

  @Test
  void fartherOrOverTheFloorOfAPocket_isFine() {
    assertTrue(check(0.3, "G0 X5 Y5", "Z0.3", "X25").isEmpty());
    assertTrue(check(0.3, "G0 X11.5 Y15", "Z-0.8", "X18.5").isEmpty()); // 0.2 over the floor
    assertTrue(check(0, "G0 X5 Y5", "Z0.01", "X25").isEmpty());
  }

  @Test
  void cuttingMovesNearTheFace_areNoRapids() {
    assertTrue(check(0.3, "G0 X5 Y5 Z1", "G1 Z0.1 F100", "X25 F900").isEmpty());
  }
}
