package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import plyscape.gcode.GcodeParser;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Workshop;

/**
 * Made programs for a panel of 40 x 40 mm that rises by 0.4 mm along X, with a pocket of 20 x 20 mm
 * that is 1 mm deep at the centre and 0.1 mm deeper per 40 mm of Y.
 */
class BentSimulationTest {

  private static final Box PANEL = new Box(0, 0, 40, 40);
  private static final Machine ROUTER = Workshop.withoutSpinUp(Workshop.ROUTER);
  private static final double RISE = 0.01;
  private static final double TAPER = 0.0025;

  private static BentPanel panel() {
    List<double[]> corners =
        List.of(
            new double[] {0, 0, 0},
            new double[] {40, 0, 40 * RISE},
            new double[] {0, 40, 0},
            new double[] {40, 40, 40 * RISE});
    return new BentPanel(
        ProbedTop.of(corners), List.of(new BentPanel.Level(1, 1 - 20 * TAPER, 0, TAPER)), null);
  }

  /** Z of the pocket's floor. */
  private static double z(double x, double y, double deeper) {
    return RISE * x - (1 + TAPER * (y - 20) + deeper);
  }

  /** Lines along X over the whole pocket, 1 mm apart, at the bent depth or a flat one. */
  private static String program(boolean bent, double deeper) {
    StringBuilder out =
        new StringBuilder("G17 G21 G90 G94 G54\nG0 Z5\nM3 S16000\nG0 X11.5 Y11.5\n");
    out.append("G0 Z0.9\n");
    for (int k = 0; k <= 17; k++) {
      double y = 11.5 + k;
      for (double x : k % 2 == 0 ? new double[] {11.5, 28.5} : new double[] {28.5, 11.5}) {
        out.append(
            String.format(
                Locale.ROOT,
                "G1 X%.3f Y%.3f Z%.3f F400\n",
                x,
                y,
                bent ? z(x, y, deeper) : -1 - deeper));
      }
    }
    return out + "G0 Z5\nM5\nM30\n";
  }

  private static Verification verify(String text, BentPanel bent) {
    Setup setup = new Setup(PANEL, 9, 0, 0, new Box(5, 5, 35, 35), ROUTER, 0.1, bent);
    Target pocket = new Target(2, 1, new double[][] {TargetsTest.square(10, 10, 30, 30)});
    Cut cut = new Cut(GcodeParser.parse("p.nc", text, ROUTER, 40, 40, 9), Workshop.END_MILL_3);
    return Simulator.run(setup, List.of(cut), List.of(pocket), List.of(Workshop.END_MILL_3))
        .verification();
  }

  @Test
  void bentProgramInItsPanel_isAsPlanned() {
    Verification v = verify(program(true, 0), panel());
    assertTrue(v.safe(), v.toString());
    assertTrue(v.matchedShare() > 0.995, v.toString());
    assertTrue(v.uncutMm2() < 0.3, v.toString());
    // The wood that stood above the floor, wherever the panel is: 1.05 at most at the upper edge,
    // and what the slope adds over the cutter's diameter.
    assertEquals(1.025 + 0.03, v.biteMaxMm(), 0.03);
  }

  @Test
  void bentProgramInAFlatPanel_isFound() {
    Verification v = verify(program(true, 0), null);
    assertTrue(v.leavesWood(0) && v.matchedShare() < 0.8, v.toString());
  }

  @Test
  void flatProgramInABentPanel_isFound() {
    Verification v = verify(program(false, 0), panel());
    assertTrue(v.gougedMm2() > 50, v.toString());
    assertTrue(v.matchedShare() < 0.8, v.toString());
  }

  @Test
  void aTwentiethTooDeep_isFoundOverTheWholePocket() {
    Verification v = verify(program(true, 0.05), panel());
    assertEquals(400, v.gougedMm2(), 10);
  }

  @Test
  void rapidJustOverAFlatFace_hitsTheHighSide() {
    String text = "G17 G21 G90 G94 G54\nM3 S16000\nG0 X5 Y5 Z0.3\nX35\nG0 Z5\nM5\nM30\n";
    assertTrue(verify(text, null).collisions().isEmpty());
    List<Verification.Collision> found = verify(text, panel()).collisions();
    assertEquals(4, found.get(0).line());
    assertTrue(found.get(0).what().startsWith("rapid through stock"), found.toString());
  }

  @Test
  void depthsBetweenFaceAndTargets_areShared() {
    BentPanel bent = panel();
    for (double[] p : new double[][] {{10, 10}, {20, 20}, {33, 7}}) {
      double floor = -z(p[0], p[1], 0);
      assertEquals(1, bent.flatMm(p[0], p[1], floor), 1e-9);
      double face = -RISE * p[0];
      assertEquals(0.5, bent.flatMm(p[0], p[1], (floor + face) / 2), 1e-9);
      assertEquals(1.3, bent.flatMm(p[0], p[1], floor + 0.3), 1e-9);
      assertEquals(-0.2, bent.flatMm(p[0], p[1], face - 0.2), 1e-9);
    }
    assertEquals(0.4, bent.risesMm(), 1e-9);
  }

  @Test
  void tinyStepsDownAreSummed_overTheFaceAsItLies() {
    List<String> lines = new ArrayList<>();
    for (int k = 0; k <= 300; k++) {
      lines.add(String.format(Locale.ROOT, "Z%.3f", 0.35 - k * 0.001));
    }
    String text =
        "G17 G21 G90 G94 G54\nM3 S16000\nG0 X35 Y20 Z0.4\nG1 F900 "
            + String.join("\n", lines)
            + "\nG0 Z5\nM5\nM30\n";
    // All of it lies over Z0, in the wood of the high side.
    assertTrue(
        verify(text, panel()).collisions().stream()
            .anyMatch(c -> c.what().startsWith("plunges at 900")));
  }
}
