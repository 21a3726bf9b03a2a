package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.Program;
import plyscape.grid.Box;
import plyscape.machine.Form;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;

/**
 * Bites by hand: a slot of 3 mm along Y = 15 in a pocket from 5 to 25 whose floor is at 2 mm; the
 * cutter's stepdown is 1 mm.
 */
class BiteTest {

  private static final Tool CUTTER = Workshop.END_MILL_3.with(Workshop.cutting(1200, 400, 1, 0.45));
  private static final double CELL = 0.1;

  private static Verification cut(Tool tool, String... programs) {
    Box panel = new Box(0, 0, 30, 30);
    Target pocket = new Target(2, 2, new double[][] {TargetsTest.square(5, 5, 25, 25)});
    List<Cut> cuts = new ArrayList<>();
    for (String text : programs) {
      Program program =
          GcodeParser.parse("0" + (cuts.size() + 1) + ".nc", text, Workshop.ROUTER, 30, 30, 9);
      cuts.add(new Cut(program, tool));
    }
    Setup setup = new Setup(panel, 9, new Box(5, 5, 25, 25), Workshop.ROUTER, CELL);
    return Simulator.run(setup, cuts, List.of(pocket), List.of(tool)).verification();
  }

  /** Lines 1 to 3 start the spindle over X10 Y15; the way back up follows. */
  private static String program(String... lines) {
    return "G17 G21 G90 G94 G54\nM3 S16000\nG0 X10 Y15 Z1\n"
        + String.join("\n", lines)
        + "\nG0 Z4\nM5\nM30\n";
  }

  @Test
  void twoSteps_biteAStepdownEach() {
    Verification v =
        cut(CUTTER, program("G1 Z-1 F100", "X20 F1200", "X10", "Z-2 F100", "X20 F1200"));
    assertEquals(1, v.biteMaxMm(), 1e-5);
    assertEquals(1, v.biteMaxShare(), 1e-5);
    assertTrue(v.bitesTooDeep().isEmpty());
  }

  @Test
  void wholeDepthAtOnce_isNamedWithItsLineAndPlace() {
    Verification v = cut(CUTTER, program("G1 Z-1 F100", "X12 F1200", "Z-2 F100", "X20 F1200"));
    Bite bite = v.bitesTooDeep().get(0);
    assertEquals(2, bite.biteMm(), 1e-5);
    assertEquals(2, v.biteMaxShare(), 1e-5);
    assertEquals(7, bite.line());
    assertEquals("01.nc", bite.file());
    assertEquals(2, bite.depthMm(), 1e-5);
    assertTrue(bite.x() > 12 && bite.x() < 21.5 && Math.abs(bite.y() - 15) < 1.5, bite + "");
  }

  @Test
  void rampIntoSolidWood_bitesAsDeepAsItGoes() {
    Verification v = cut(CUTTER, program("G1 Z0 F100", "X20 Z-1.4 F300"));
    assertEquals(1.4, v.biteMaxMm(), 0.02); // the last cells' centres lie half a cell short
    assertFalse(v.bitesTooDeep().isEmpty());
  }

  @Test
  void movesShorterThanTheRim_biteLikeOneLongMove() {
    List<String> lines = new ArrayList<>(List.of("G1 Z-1 F100", "X12 F1200", "Z-2 F100"));
    for (int k = 1; k <= 200; k++) {
      lines.add(String.format(java.util.Locale.ROOT, "X%.2f F1200", 12 + k * 0.04));
    }
    Verification v = cut(CUTTER, program(lines.toArray(String[]::new)));
    assertEquals(2, v.bitesTooDeep().get(0).biteMm(), 1e-5);
  }

  @Test
  void sliverBesideTheWay_isNoBite_aWiderOneIs() {
    String first = program("G1 Z-1 F100", "X20 F1200");
    for (double aside : new double[] {0.04, 0.3}) {
      String second =
          program("G1 Z-1 F100", "Y" + (15 + aside) + " F1200", "Z-2 F100", "X20 F1200");
      Verification v = cut(CUTTER, first, second);
      boolean wide = aside > 0.05;
      assertEquals(wide, !v.bitesTooDeep().isEmpty(), "beside by " + aside);
      assertEquals(wide ? 2 : 1, v.biteMaxMm(), 1e-5);
    }
  }

  @Test
  void woodLeftAtTheWall_isNoBite_within005() {
    // Along the lower wall (Y 5) with its edge at it, after a way that kept off by so much.
    for (double off : new double[] {0.04, 0.2}) {
      String first =
          program("G0 Y" + (6.5 + off), "G1 Z-1 F100", "X20 F1200", "Z-2 F100", "X10 F1200");
      String second = program("G0 Y6.5", "G1 Z-2 F100", "X20 F1200");
      Verification v = cut(CUTTER, first, second);
      assertEquals(off > 0.05, !v.bitesTooDeep().isEmpty(), "off by " + off);
    }
  }

  @Test
  void unknownStepdown_isMeasuredAndNotJudged() {
    Tool plain = CUTTER.with(plyscape.machine.CuttingData.UNKNOWN);
    Verification v = cut(plain, program("G1 Z-2 F100", "X20 F1200"));
    assertEquals(2, v.biteMaxMm(), 1e-5);
    assertEquals(0, v.biteMaxShare(), 0);
    assertTrue(v.bitesTooDeep().isEmpty());
  }

  @Test
  void nothingCut_hasNoBite() {
    Verification v = cut(CUTTER, program("G1 X20 F1200"));
    assertEquals(0, v.biteMaxMm(), 0);
    assertTrue(v.bites().isEmpty());
  }

  /**
   * A ball bites as deep as the wood that it takes at once under its axis: 1.2 mm straight into
   * solid wood is too deep for a stepdown of 1; in two steps it isn't, and its flank, which rises
   * again before it comes nearer, takes a sliver only.
   */
  @Test
  void ball_isHeldToItsStepdown() {
    Tool ball =
        new Tool(
            "ball 3",
            new Form(Tool.Shape.BALL, 3, 12, 2, 0, 0, Tool.Spiral.UNSAID),
            Workshop.cutting(1200, 400, 1, 0.3));
    Verification once = cut(ball, program("G1 Z-1.2 F300", "X14 F900"));
    assertEquals(1.2, once.biteMaxMm(), 0.003);
    assertFalse(once.bitesTooDeep().isEmpty());
    Verification twice = cut(ball, program("G1 Z-0.7 F300", "X14 F900", "Z-1.2 F300", "X10 F900"));
    assertEquals(0.7, twice.biteMaxMm(), 0.003);
    assertEquals(List.of(), twice.bitesTooDeep());
  }
}
