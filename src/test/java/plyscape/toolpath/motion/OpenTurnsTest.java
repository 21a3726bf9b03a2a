package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Drops and rises at turns: spread over open ground, straight where wood stands. */
class OpenTurnsTest {

  private static final double STEP = 0.25;
  private static final double FALL = 3;

  /** From 0 to a place at one depth, and back at another. */
  private static List<double[]> turn(int sections, double out, double back) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= sections; i++) {
      points.add(new double[] {i * STEP, 0, out, 1});
    }
    for (int i = sections; i >= 0; i--) {
      points.add(new double[] {i * STEP, 0, back, 1});
    }
    return points;
  }

  private static double steepest(List<double[]> points) {
    double steepest = 0;
    for (int i = 1; i < points.size(); i++) {
      double way = Math.abs(points.get(i)[0] - points.get(i - 1)[0]);
      double change = Math.abs(points.get(i)[2] - points.get(i - 1)[2]);
      steepest = Math.max(steepest, change < 1e-9 ? 0 : change / way);
    }
    return steepest;
  }

  @Test
  void dropOverOpenGround_fallsAsFastAsThePlungeAllowsAndNoFaster() {
    // 0.5 mm in 1.5 mm of way, half of it before the turn: the open ground is long enough.
    List<double[]> spread = OpenTurns.spread(turn(20, 1, 1.5), FALL, (point, depth) -> true);
    assertEquals(1 / FALL, steepest(spread), 1e-9);
    assertEquals(1, spread.get(0)[2], 0);
    assertEquals(1.5, spread.get(spread.size() - 1)[2], 0);
  }

  @Test
  void woodUpToNearTheEnd_isPassedAtBothDepthsAsBefore() {
    double wood = 20 * STEP - 0.6;
    OpenTurns.Ground ground = (point, depth) -> point[0] > wood;
    List<double[]> before = turn(20, 1, 1.9);
    List<double[]> spread = OpenTurns.spread(before, FALL, ground);
    for (double depth : new double[] {1, 1.9}) {
      long passed = spread.stream().filter(point -> point[0] <= wood && point[2] == depth).count();
      long wanted = before.stream().filter(point -> point[0] <= wood && point[2] == depth).count();
      assertEquals(wanted, passed, "at " + depth);
    }
    assertTrue(spread.stream().allMatch(point -> point[2] >= 1 && point[2] <= 1.9));
    // What is open takes all of the drop.
    assertEquals(0.9 / (2 * 2 * STEP), steepest(spread), 1e-9);
  }

  @Test
  void endInWood_goesStraightDown() {
    List<double[]> before = turn(20, 1, 1.9);
    List<double[]> spread = OpenTurns.spread(before, FALL, (point, depth) -> false);
    assertEquals(before.size(), spread.size());
    for (int i = 0; i < before.size(); i++) {
      assertEquals(before.get(i)[2], spread.get(i)[2], 0);
    }
  }

  @Test
  void riseBeforeWood_isSpreadOverTheOpenGroundBehind() {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= 20; i++) {
      points.add(new double[] {i * STEP, 0, 3, 1});
    }
    for (int i = 20; i <= 40; i++) {
      points.add(new double[] {i * STEP, 0, 1, 1});
    }
    double wood = 20 * STEP + 1e-6;
    List<double[]> spread = OpenTurns.spread(points, FALL, (point, depth) -> point[0] < wood);
    assertTrue(spread.stream().filter(point -> point[0] > wood).allMatch(point -> point[2] == 1));
    assertEquals(0.5, steepest(spread), 1e-9);
  }
}
