package plyscape.toolpath.slot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Ways down a slot, against a stock of their own: bites, ramps and the floor they leave. */
class SlotLevelsTest {

  private static final double STEP = 0.1;
  private static final SlotLimits LIMITS =
      new SlotLimits(0.625, 1, Math.tan(Math.toRadians(5)), 0.75);

  private static SlotWay slot(double length, double room) {
    int n = (int) Math.round(length / STEP) + 1;
    double[] x = new double[n];
    double[] y = new double[n];
    double[] left = new double[n];
    double[] right = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = i * STEP;
      left[i] = room / 2;
      right[i] = -room / 2;
    }
    return new SlotWay(x, y, x, left, x, right, false);
  }

  /** Depths are written in thousandths of a mm. */
  private static final double WRITTEN = 1e-3 + 1e-9;

  /** Runs the ways over wood and checks every place; the way in all, mm. */
  private static double run(SlotWay slot, double[] standing, double floor, String what) {
    double[] wood = standing.clone();
    SlotLevels levels = new SlotLevels(slot, standing, floor, LIMITS);
    double[] sum = {0};
    double[] last = {levels.topMm()};
    int[] at = {0};
    levels.run(
        (i, side, depth, gone, bite, rim) -> {
          assertTrue(Math.abs(i - at[0]) <= 1, what);
          double way = Math.abs(i - at[0]) * STEP;
          sum[0] += way;
          double taken = 0;
          for (int k = 0; k < wood.length; k++) {
            if (Math.abs(k - i) * STEP <= LIMITS.reachMm()) {
              taken = Math.max(taken, depth - wood[k]);
            }
          }
          assertTrue(taken <= LIMITS.stepdownMm() + 1e-9, what + ": bites " + taken);
          assertTrue(gone <= depth - taken + 1e-9 || taken == 0, what + ": said gone to " + gone);
          boolean down = depth > last[0] + 1e-12 && taken > 1e-9;
          assertTrue(
              !down || depth - last[0] <= LIMITS.slope() * way + WRITTEN,
              what + ": falls " + (depth - last[0]) + " in " + way);
          assertTrue(depth <= floor + 1e-9, what);
          wood[i] = Math.max(wood[i], depth);
          last[0] = depth;
          at[0] = i;
        });
    for (int i = 0; i < wood.length; i++) {
      assertEquals(floor, wood[i], 1e-3, what + ": left at " + i);
    }
    return sum[0];
  }

  @Test
  void standingWood_goesDownToTheFloorEverywhere() {
    for (double room : new double[] {0, 0.1, 0.3}) {
      for (double length : new double[] {1.2, 3, 8, 40}) {
        for (double floor : new double[] {0.3, 0.9, 4.7}) {
          SlotWay slot = slot(length, room);
          run(slot, new double[slot.size()], floor, room + " " + length + " " + floor);
        }
      }
    }
  }

  @Test
  void anyGround_isLeftFlat() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      SlotWay slot = slot(2 + 30 * random.nextDouble(), random.nextBoolean() ? 0 : 0.2);
      double[] standing = new double[slot.size()];
      double depth = 0;
      for (int i = 0; i < standing.length; i++) {
        depth = random.nextInt(25) == 0 ? 4 * random.nextDouble() : depth;
        standing[i] = depth;
      }
      run(slot, standing, 4, "seed " + seed);
    }
  }

  /** A ramp of 5 degrees drops 0.5 in 5.7 mm; a level of half a stepdown is then one way. */
  @Test
  void longSlot_takesAboutOneWayABite() {
    SlotWay slot = slot(200, 0);
    double way = run(slot, new double[slot.size()], 2.5, "long");
    assertTrue(way < 200 * 6.2, "way of " + way);
  }

  @Test
  void clearedSlot_isLeftAlone() {
    SlotWay slot = slot(20, 0);
    double[] standing = new double[slot.size()];
    java.util.Arrays.fill(standing, 3);
    assertEquals(0, run(slot, standing, 3, "cleared"), 1e-9);
  }
}
