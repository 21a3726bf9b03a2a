package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;
import plyscape.machine.Clamping;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;

class SimulatorTest {

  private static final String LARGE = TwoTerraces.large();
  private static final String SMALL = TwoTerraces.small();

  private static CutResult cut(String large, String small) {
    return TwoTerraces.cut(0.1, large, small);
  }

  @Test
  void goodProgram_atThreeCells() {
    for (double cell : new double[] {0.05, 0.1, 0.2}) {
      Verification v = TwoTerraces.cut(cell, LARGE, SMALL).verification();
      assertEquals(List.of(), v.collisions());
      assertEquals(0, v.gougedMm2(), 0);
      assertEquals(0, v.gougeMaxMm(), 0);
      assertEquals(0, v.uncutMm2(), 0);
      // The square's corners: (4 - pi) r^2 with r = 1.5 (references.md section 6); the disk has
      // none.
      assertEquals((4 - Math.PI) * 2.25, v.unreachableMm2(), 0.25, "cell " + cell);
      assertEquals(1 - v.unreachableMm2() / (48 * 48), v.matchedShare(), 0.004, "cell " + cell);
      assertTrue(v.safe());
    }
  }

  @Test
  void largeToolAlone_leavesWhatTheSmallOneCouldReach() {
    CutResult result =
        Simulator.run(
            TwoTerraces.setup(0.05),
            List.of(new Cut(TwoTerraces.parse("01.nc", LARGE), TwoTerraces.LARGE)),
            TwoTerraces.targets(),
            List.of(TwoTerraces.LARGE, TwoTerraces.SMALL));
    double corners = (4 - Math.PI) * (9 - 2.25);
    // Off walls by 0.05 mm: about 2 x 1.5 mm of wall a corner don't count.
    assertEquals(corners, result.verification().uncutMm2(), 0.7);
    assertEquals(4, result.differences().size());
    Difference corner = result.differences().get(0);
    assertEquals(CellVerdict.UNCUT, corner.verdict());
    assertTrue(
        Math.abs(Math.abs(corner.x() - 30) - 19) < 1
            && Math.abs(Math.abs(corner.y() - 30) - 19) < 1,
        corner + "");
    Verification alone =
        Simulator.run(
                TwoTerraces.setup(0.05),
                List.of(new Cut(TwoTerraces.parse("01.nc", LARGE), TwoTerraces.LARGE)),
                TwoTerraces.targets(),
                List.of(TwoTerraces.LARGE))
            .verification();
    assertEquals(0, alone.uncutMm2(), 0);
    assertEquals((4 - Math.PI) * 9, alone.unreachableMm2(), 0.5);
  }

  @Test
  void wrongDepthByATenth() {
    String spoiled = LARGE.replaceFirst("Z-2.000", "Z-2.100");
    Verification v = cut(spoiled, SMALL).verification();
    assertEquals(Math.PI * 144, v.gougedMm2(), 1);
    assertEquals(0.1, v.gougeMaxMm(), 1e-6); // nothing is to be that deep: how much too deep
    spoiled = LARGE.replaceFirst("Z-2.000", "Z-1.900");
    v = cut(spoiled, SMALL).verification();
    assertEquals(0, v.gougedMm2(), 0);
    assertEquals(Math.PI * 144, v.uncutMm2(), 5);
  }

  @Test
  void gougeSideways_isMeasuredFromTheWall() {
    // The small tool's ring 0.15 mm too far right: over the right wall.
    String spoiled = SMALL.replace("X48.500", "X48.650");
    CutResult result = cut(LARGE, spoiled);
    assertEquals(37 * 0.15, result.verification().gougedMm2(), 37 * 0.05 + 0.5);
    assertEquals(
        0.15,
        result.verification().gougeMaxMm(),
        0.051); // of cell centres, so up to half a cell less
    assertTrue(result.verification().gougeMaxMm() <= 0.15 + 1e-9);
    Difference worst = result.differences().get(0);
    assertEquals(CellVerdict.GOUGED, worst.verdict());
    assertEquals(50.1, worst.x(), 0.1);
  }

  @Test
  void overWallByLessThanAllowed_isNoGouge() {
    Verification v =
        TwoTerraces.cut(0.05, LARGE, SMALL.replace("X48.500", "X48.519")).verification();
    assertEquals(0, v.gougedMm2(), 0);
    v = TwoTerraces.cut(0.05, LARGE, SMALL.replace("X48.500", "X48.545")).verification();
    assertTrue(v.gougedMm2() > 0.3, v.toString());
  }

  @Test
  void rapidAtDepth_isFoundWithLineAndPlace() {
    // The last lift of the first pass stays in the floor, so the rapid to the next pass runs
    // through it.
    List<String> lines = LARGE.lines().toList();
    int at = -1;
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith("(pass 2")) {
        at = i - 1;
      }
    }
    assertEquals("G0 Z4.000", lines.get(at));
    String spoiled = LARGE.replaceFirst("G0 Z4.000\n\\(pass 2", "G0 Z-1.500\n(pass 2");
    Verification v = cut(spoiled, SMALL).verification();
    Verification.Collision first = v.collisions().get(0);
    assertEquals(at + 1, first.line());
    assertEquals("rapid through stock, up to 0.500 mm deep", first.what());
    assertEquals(30, first.x(), 1);
    assertEquals(30, first.y(), 1);
    assertTrue(!v.safe());
  }

  @Test
  void rapidOverLowerFloor_isFine() {
    // Between the passes only as high as the square's floor: nothing there but air.
    String low = LARGE.replaceFirst("G0 Z4.000\n\\(pass 2", "G0 Z-0.500\n(pass 2");
    assertEquals(List.of(), cut(low, SMALL).verification().collisions());
  }

  @Test
  void spindleOff_cutting() {
    Verification v = cut(LARGE.replace("M3 S16000\n", ""), SMALL).verification();
    assertTrue(
        v.collisions().get(0).what().startsWith("cuts with the spindle off"),
        v.collisions().get(0).what());
  }

  @Test
  void plungeTooFast_isFound() {
    Verification v = cut(LARGE.replaceFirst("F500", "F900"), SMALL).verification();
    assertEquals("plunges at 900 mm/min, the tool's plunge is 500", v.collisions().get(0).what());
  }

  @Test
  void fluteLengthTravelAndPanelBottom() {
    Verification v = cut(LARGE.replaceFirst("Z-2.000", "Z-13.000"), SMALL).verification();
    List<String> said =
        v.collisions().stream().map(Verification.Collision::what).distinct().toList();
    assertTrue(
        said.stream().anyMatch(w -> w.equals("is deeper than the flutes are long, 12 mm")),
        said.toString());
    assertTrue(
        said.stream().anyMatch(w -> w.equals("cuts through the panel, which is 9 mm thick")),
        said.toString());
    v = cut(LARGE.replaceFirst("Z4.000", "Z79.000"), SMALL).verification();
    assertEquals("needs more than the 80 mm that the Z axis may use", v.collisions().get(0).what());
  }

  private static Tool longMill(double fluteLengthMm, Clamping clamping) {
    Tool six = Workshop.endMill(6, fluteLengthMm);
    return new Tool("long", six.form(), six.cutting(), clamping);
  }

  @Test
  void shankAndHolder_touchWhatStandsBesideThem() {
    Tool necked = longMill(1.5, new Clamping(8, 1.8, 20));
    Verification v =
        Simulator.run(
                TwoTerraces.setup(0.1),
                List.of(new Cut(TwoTerraces.parse("01.nc", LARGE), necked)),
                TwoTerraces.targets(),
                List.of(necked))
            .verification();
    // At 2.0 deep the shank (radius 4) begins 0.5 and the holder 0.2 below the face, but the
    // square's floor is at 1.0: the
    // shank is clear; the holder (radius 10) comes over the uncut margin only beyond 20 - 10 = 10
    // from the middle: clear too.
    assertEquals(List.of(), v.collisions());
    Tool wide = longMill(0.5, new Clamping(8, 0, 0));
    v =
        Simulator.run(
                TwoTerraces.setup(0.1),
                List.of(new Cut(TwoTerraces.parse("01.nc", LARGE), wide)),
                TwoTerraces.targets(),
                List.of(wide))
            .verification();
    assertEquals("the shank touches stock, up to 0.500 mm deep", v.collisions().get(0).what());
  }

  @Test
  void wrongCutter() {
    Verification v =
        Simulator.run(
                TwoTerraces.setup(0.1),
                List.of(
                    new Cut(TwoTerraces.parse("01.nc", LARGE), TwoTerraces.LARGE),
                    new Cut(TwoTerraces.parse("02.nc", SMALL), TwoTerraces.LARGE)),
                TwoTerraces.targets(),
                List.of(TwoTerraces.LARGE, TwoTerraces.SMALL))
            .verification();
    assertEquals(1.5, v.gougeMaxMm(), 0.06);
  }

  @Test
  void shiftedArcCentre_ofOneHalfCircle() {
    // Both radii change alike, so the words are right and only the cut is wrong: one half of the
    // outermost ring bulges.
    String right = "G3 X21.0000 Y30.0000 I-9.0000 J0.0000";
    assertTrue(LARGE.contains(right), LARGE);
    CutResult result = cut(LARGE.replace(right, "G3 X21.0000 Y30.0000 I-9.0000 J-1.5000"), SMALL);
    Difference worst = result.differences().get(0);
    assertEquals(30, worst.x(), 1); // the crescent left at the top, 1.4 mm high
    assertEquals(41.3, worst.y(), 1);
    assertTrue(
        result.verification().gougedMm2() + result.verification().uncutMm2() > 1,
        result.verification().toString());
    // Otherwise the radius rule of the standard finds it when reading.
    assertThrows(
        InputFault.class,
        () -> cut(LARGE.replace(right, "G3 X21.0000 Y30.0000 I-8.9000 J0.0000"), SMALL));
  }

  @Test
  void throughALine_leavesTheRestUncut() {
    var program = TwoTerraces.parse("01.nc", LARGE);
    int passTwo = LARGE.substring(0, LARGE.indexOf("(pass 2")).split("\n").length;
    CutResult result =
        Simulator.run(
            TwoTerraces.setup(0.1),
            List.of(new Cut(program.through(passTwo), TwoTerraces.LARGE)),
            TwoTerraces.targets(),
            List.of(TwoTerraces.LARGE));
    assertEquals(Math.PI * 144, result.verification().uncutMm2(), 5);
  }

  @Test
  void sameOnOneProcessorAndMany() throws Exception {
    CutResult many = cut(LARGE, SMALL);
    ForkJoinPool one = new ForkJoinPool(1);
    CutResult single = one.submit(() -> cut(LARGE, SMALL)).get();
    one.shutdown();
    assertEquals(many.verification(), single.verification());
    org.junit.jupiter.api.Assertions.assertArrayEquals(
        many.field().depth(), single.field().depth());
    org.junit.jupiter.api.Assertions.assertArrayEquals(many.verdicts(), single.verdicts());
  }
}
