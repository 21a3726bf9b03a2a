package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;

/** Verdicts on surfaces that are made by hand: a slope from 1 mm in the west to 2 in the east. */
class FaceComparisonTest {

  private static final Box PANEL = new Box(0, 0, 30, 20);
  private static final Box CARVED = new Box(5, 5, 25, 15);
  private static final Tool FLAT = Workshop.cutter("flat", Tool.Shape.FLAT, 3, 12);
  private static final Tool BALL =
      Workshop.cutter("ball", Tool.Shape.BALL, 3, 12).with(Workshop.cutting(1800, 500, 2, 0.2));

  private static Target target() {
    double[] z = new double[31 * 21];
    CellFrame frame = new CellFrame(-0.5, -0.5, 1, 1, 31, 21);
    for (int i = 0; i < z.length; i++) {
      z[i] = 100 - frame.centreX(i % 31);
    }
    return new Target(
        2,
        2,
        new double[][] {TargetsTest.square(5, 5, 25, 15)},
        new SculptedDepth(new Grid(frame, z), 95, 75, 1, 2, 0.02));
  }

  private interface Depth {
    double at(double x, double y, double wanted);
  }

  private static FaceComparison compare(Depth depth) {
    HeightField field = HeightField.uncut(PANEL, 0.1);
    CellFrame frame = field.frame();
    for (int i = 0; i < field.depth().length; i++) {
      double x = frame.centreX(i % frame.columns());
      double y = frame.centreY(i / frame.columns());
      double wanted = CARVED.contains(x, y) ? 1 + (x - 5) / 20 : 0;
      field.depth()[i] = (float) depth.at(x, y, wanted);
    }
    return new FaceComparison(
        field,
        new FaceWalls(PANEL, List.of(target()), null),
        new Setup(PANEL, 8, CARVED, Workshop.ROUTER, 0.1),
        List.of(target()),
        List.of(FLAT, BALL));
  }

  @Test
  void asWanted_orACuspHigher_matches() {
    assertEquals(
        1, compare((x, y, wanted) -> wanted).verification(List.of(), List.of()).matchedShare());
    Verification high =
        compare((x, y, wanted) -> Math.max(0, wanted - 0.029)).verification(List.of(), List.of());
    assertEquals(1, high.matchedShare());
    assertEquals(0, high.gougedMm2());
    assertEquals(0, high.uncutMm2());
  }

  /** A square of 2 x 2 mm cut 0.02 too deep. */
  @Test
  void tooDeep_isAGouge_withItsPlaceAndDepth() {
    FaceComparison spoiled =
        compare(
            (x, y, wanted) ->
                Math.abs(x - 15) < 1 && Math.abs(y - 10) < 1 ? wanted + 0.02 : wanted);
    Verification v = spoiled.verification(List.of(), List.of());
    assertEquals(4, v.gougedMm2(), 1e-6);
    assertEquals(0.02, v.gougeMaxMm(), 1e-4);
    assertEquals(15, spoiled.differences().get(0).x(), 1.1);
    assertEquals(1 - 4.0 / 200, v.matchedShare(), 1e-9);
  }

  @Test
  void cutIntoTheBorder_isAGouge() {
    Verification v =
        compare((x, y, wanted) -> x > 3 && x < 4 && y > 8 && y < 9 ? 0.5 : wanted)
            .verification(List.of(), List.of());
    assertEquals(1, v.gougedMm2(), 1e-6);
  }

  /** The same square left 0.05 too high, in the open: the ball could take it. */
  @Test
  void tooHighInTheOpen_isUncut() {
    Verification v =
        compare(
                (x, y, wanted) ->
                    Math.abs(x - 15) < 1 && Math.abs(y - 10) < 1 ? wanted - 0.05 : wanted)
            .verification(List.of(), List.of());
    assertEquals(4, v.uncutMm2(), 1e-6);
    assertEquals(0, v.unreachableMm2());
  }

  /**
   * Roughed to 1 mm all over: at the foot of the eastern wall, 2 mm deep, the ball of 1.5 mm can't
   * come nearer than its radius, so a strip there is out of reach; most of the rest is uncut.
   */
  @Test
  void footOfAWall_isOutOfTheBallsReach() {
    FaceComparison rough = compare((x, y, wanted) -> wanted > 0 ? 1 : 0);
    CellFrame frame = new CellFrame(0, 0, 0.1, 0.1, 300, 200);
    byte[] verdicts = rough.verdicts();
    // Places at cells' centres: one keeps the radius and 0.05 mm off the wall, the next may not.
    for (int column = 235; column < 250; column++) {
      double surely = taken(frame.centreX(column), 23.35);
      double atBest = taken(frame.centreX(column), 23.45);
      CellVerdict verdict = CellVerdict.values()[verdicts[100 * 300 + column]];
      if (surely > 0.04) {
        assertEquals(CellVerdict.UNCUT, verdict, "column " + column);
      } else if (atBest < 0.02) {
        assertEquals(CellVerdict.UNREACHABLE, verdict, "column " + column);
      }
    }
    assertTrue(rough.verification(List.of(), List.of()).unreachableMm2() > 0);
  }

  /** What the ball takes off at x, of a face roughed to 1 mm, with its axis over another x. */
  private static double taken(double x, double axis) {
    double off = Math.max(0, x - axis);
    double tip = 1 + (Math.min(x, axis) - 5) / 20;
    return tip - (1.5 - Math.sqrt(Math.max(0, 2.25 - off * off))) - 1;
  }

  /** In a corner of the pocket no flat cutter of 1.5 mm radius fits. */
  @Test
  void cornerThatNoFlatCutterFits_isUnreachable() {
    FaceComparison corners =
        compare(
            (x, y, wanted) -> {
              double dx = Math.max(0, 6.5 - x);
              double dy = Math.max(0, 6.5 - y);
              boolean corner = x > 5 && y > 5 && Math.hypot(dx, dy) > 1.5;
              return corner ? 0 : wanted;
            });
    Verification v = corners.verification(List.of(), List.of());
    // The corner of a square loses (1 - pi/4) r2 (references.md, section 6).
    assertEquals((1 - Math.PI / 4) * 2.25, v.unreachableMm2(), 0.06);
    assertEquals(0, v.uncutMm2(), 0.03);
  }
}
