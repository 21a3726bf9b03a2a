package plyscape.toolpath.depth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Checked against brute force: every subset of all whole-mm depths as planes, whether at a level or
 * between.
 */
class DepthSequenceTest {

  @Test
  void nothingToCut_noSteps() {
    assertEquals(List.of(), DepthSequence.plan(List.of(), 2));
    assertEquals(0, DepthSequence.seconds(List.of(), 2));
  }

  @Test
  void allWithinOneStepdown_eachOnlyWhereItShows() {
    var works =
        List.of(
            new LevelWork(0.5, 100, 40), new LevelWork(1.4, 60, 35), new LevelWork(2.0, 25, 25));
    assertEquals(
        List.of(
            new DepthStep(0, 0.5, false, 0),
            new DepthStep(1, 1.4, false, 0),
            new DepthStep(2, 2.0, false, 0)),
        DepthSequence.plan(works, 2));
  }

  /**
   * A cutter of 2 mm under plies of about 0.9: planes at every second level spare the cuts in
   * between.
   */
  @Test
  void deeperThanAStepdown_planeAtTheLevelThatSparesMost() {
    var works =
        List.of(
            new LevelWork(0.9, 100, 20),
            new LevelWork(1.8, 80, 30),
            new LevelWork(2.7, 50, 20),
            new LevelWork(3.6, 30, 30));
    assertEquals(
        List.of(
            new DepthStep(0, 0.9, false, 0),
            new DepthStep(1, 1.8, true, 0),
            new DepthStep(2, 2.7, false, 1.8),
            new DepthStep(3, 3.6, false, 1.8)),
        DepthSequence.plan(works, 2));
  }

  @Test
  void oneDeepLevel_isCutInFewestPlanes() {
    assertEquals(
        List.of(
            new DepthStep(0, 2, true, 0),
            new DepthStep(0, 4, true, 2),
            new DepthStep(0, 5, false, 4)),
        DepthSequence.plan(List.of(new LevelWork(5, 7, 7)), 2));
  }

  /** 0.1 + 0.2 is a hair over 0.3, which must not cost a plane. */
  @Test
  void depthOfWholeSteps_needsNoFurtherPlane() {
    var steps = DepthSequence.plan(List.of(new LevelWork(3 * (0.1 + 0.2), 7, 7)), 0.9);
    assertEquals(1, steps.size());
  }

  @Test
  void planesBetweenLevels_lieOnWholeMicrons() {
    for (DepthStep step : DepthSequence.plan(List.of(new LevelWork(9.1, 7, 7)), 1.23456)) {
      assertEquals(Math.rint(step.depthMm() * 1000) / 1000, step.depthMm(), 1e-12);
      assertTrue(step.depthMm() - step.fromMm() <= 1.23456 + 1e-9);
    }
  }

  @Test
  void depthsThatDontRise_areRefused() {
    var works = List.of(new LevelWork(2, 1, 1), new LevelWork(2, 1, 1));
    assertThrows(IllegalArgumentException.class, () -> DepthSequence.plan(works, 2));
    assertThrows(IllegalArgumentException.class, () -> new LevelWork(0, 1, 1));
  }

  @Test
  void oneCutter_equalsBruteForce() {
    for (int seed = 0; seed < 500; seed++) {
      var random = new Random(seed);
      List<LevelWork> works = randomWorks(random, 11);
      int stepdown = 1 + random.nextInt(5);
      check(works, stepdown, "seed " + seed);
    }
  }

  private static List<LevelWork> randomWorks(Random random, int deepest) {
    List<LevelWork> works = new ArrayList<>();
    int depth = 0;
    double full = 50 + random.nextInt(100);
    while (works.isEmpty() || works.size() < 5 && depth < deepest - 3) {
      depth += 1 + random.nextInt(works.isEmpty() ? 6 : 3);
      // Walls and entries make what shows dearer than its share of the pocket; some levels don't
      // show.
      double exposed = random.nextInt(4) == 0 ? 0 : full * random.nextDouble() * 1.3;
      works.add(new LevelWork(Math.min(depth, deepest), full, exposed));
      full *= random.nextDouble();
    }
    return works;
  }

  private static void check(List<LevelWork> works, int stepdown, String where) {
    double best = Double.POSITIVE_INFINITY;
    int deepest = (int) works.get(works.size() - 1).depthMm();
    for (int planes = 0; planes < 1 << deepest; planes++) {
      List<DepthStep> steps = new ArrayList<>();
      int from = 0;
      for (int z = 1; z <= deepest; z++) {
        int pocket = 0;
        while (works.get(pocket).depthMm() < z) {
          pocket++;
        }
        boolean isLevel = works.get(pocket).depthMm() == z;
        if ((planes >> (z - 1) & 1) != 0) {
          steps.add(new DepthStep(pocket, z, true, from));
          from = z;
        } else if (isLevel && works.get(pocket).exposedS() > 0) {
          steps.add(new DepthStep(pocket, z, false, from));
        }
      }
      best = Math.min(best, cost(works, steps, stepdown));
    }
    List<DepthStep> found = DepthSequence.plan(works, stepdown);
    double cost = cost(works, found, stepdown);
    assertEquals(
        best,
        cost,
        1e-5 * Math.max(1, best),
        where + " " + works + " stepdown " + stepdown + " " + found);
    assertEquals(cost, DepthSequence.seconds(works, stepdown), 1e-9 * Math.max(1, cost), where);
  }

  /** Follows the steps; infinite when a rule is broken. */
  private static double cost(List<LevelWork> works, List<DepthStep> steps, int stepdown) {
    double seconds = 0;
    double plane = 0;
    boolean[] shown = new boolean[works.size()];
    for (DepthStep step : steps) {
      LevelWork work = works.get(step.level());
      boolean above = step.level() > 0 && works.get(step.level() - 1).depthMm() >= step.depthMm();
      if (step.fromMm() != plane
          || step.depthMm() - plane > stepdown
          || step.depthMm() > work.depthMm()
          || above) {
        return Double.POSITIVE_INFINITY;
      }
      shown[step.level()] |= step.depthMm() == work.depthMm();
      seconds += step.full() ? work.fullS() : work.exposedS();
      if (step.full()) {
        plane = step.depthMm();
      }
    }
    for (int i = 0; i < shown.length; i++) {
      if (works.get(i).exposedS() > 0 && !shown[i]) {
        return Double.POSITIVE_INFINITY;
      }
    }
    return seconds;
  }
}
