package plyscape.toolpath.depth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.bound.ChainCost;

/**
 * Checked against brute force: every subset of all whole-mm depths as planes, whether at a level or
 * between.
 */
class DepthSequenceTest {

  @Test
  void nothingToCut_noSteps() {
    assertEquals(List.of(), DepthSequence.plan(List.of(), 2, DepthSequence.NOTHING_LEFT));
    assertEquals(0, DepthSequence.seconds(List.of(), 2, DepthSequence.NOTHING_LEFT));
  }

  @Test
  void allWithinOneStepdown_eachOnlyWhereItShows() {
    var works =
        List.of(
            new LevelWork(0.5, 100, 40), new LevelWork(1.4, 60, 35), new LevelWork(2.0, 25, 25));
    assertEquals(
        List.of(
            new DepthStep(0, 0.5, 0, false),
            new DepthStep(1, 1.4, 0, false),
            new DepthStep(2, 2.0, 0, false)),
        DepthSequence.plan(works, 2, DepthSequence.NOTHING_LEFT));
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
            new DepthStep(0, 0.9, 0, false),
            new DepthStep(1, 1.8, 0, true),
            new DepthStep(2, 2.7, 1.8, false),
            new DepthStep(3, 3.6, 1.8, false)),
        DepthSequence.plan(works, 2, DepthSequence.NOTHING_LEFT));
  }

  @Test
  void oneDeepLevel_isCutInFewestPlanes() {
    assertEquals(
        List.of(
            new DepthStep(0, 2, 0, true),
            new DepthStep(0, 4, 2, true),
            new DepthStep(0, 5, 4, false)),
        DepthSequence.plan(List.of(new LevelWork(5, 7, 7)), 2, DepthSequence.NOTHING_LEFT));
  }

  /** 0.1 + 0.2 is a hair over 0.3, which must not cost a plane. */
  @Test
  void depthOfWholeSteps_needsNoFurtherPlane() {
    var steps =
        DepthSequence.plan(
            List.of(new LevelWork(3 * (0.1 + 0.2), 7, 7)), 0.9, DepthSequence.NOTHING_LEFT);
    assertEquals(1, steps.size());
  }

  @Test
  void planesBetweenLevels_lieOnWholeMicrons() {
    for (DepthStep step :
        DepthSequence.plan(
            List.of(new LevelWork(9.1, 7, 7)), 1.23456, DepthSequence.NOTHING_LEFT)) {
      assertEquals(Math.rint(step.depthMm() * 1000) / 1000, step.depthMm(), 1e-12);
      assertTrue(step.depthMm() - step.fromMm() <= 1.23456 + 1e-9);
    }
  }

  @Test
  void depthsThatDontRise_areRefused() {
    var works = List.of(new LevelWork(2, 1, 1), new LevelWork(2, 1, 1));
    assertThrows(
        IllegalArgumentException.class,
        () -> DepthSequence.plan(works, 2, DepthSequence.NOTHING_LEFT));
    assertThrows(IllegalArgumentException.class, () -> new LevelWork(0, 1, 1));
  }

  @Test
  void oneCutter_equalsBruteForce() {
    for (int seed = 0; seed < 500; seed++) {
      var random = new Random(seed);
      List<LevelWork> works = randomWorks(random, 11);
      int stepdown = 1 + random.nextInt(5);
      check(works, stepdown, DepthSequence.NOTHING_LEFT, "seed " + seed);
    }
  }

  /**
   * Several cutters: what the first can't reach is finished by the cheapest chain of the others;
   * the brute force tries every set of planes with it.
   */
  @Test
  void severalCutters_equalsBruteForceWithChainsOfTheRest() {
    for (int seed = 0; seed < 300; seed++) {
      var random = new Random(1000 + seed);
      List<LevelWork> works = randomWorks(random, 10);
      double[] areas = random.doubles(works.size(), 0, 300).toArray();
      double rest = 1 + random.nextInt(3);
      DepthSequence.Leftover leftover =
          (level, stands) -> {
            // The places go on to the deepest level; stops at levels can't beat going down in whole
            // steps.
            double depth = works.get(works.size() - 1).depthMm() - stands;
            return depth <= 0 ? 0 : areas[level] * ChainCost.steps(depth, rest) * 0.02;
          };
      check(works, 1 + random.nextInt(4), leftover, "seed " + seed);
    }
  }

  @Test
  void rates_addAreaWallsAndEntries() {
    var rates = new LevelWork.Rates(50, 25, 1.5);
    assertEquals(10 + 4 + 3, rates.seconds(500, 100, 2), 1e-12);
    assertEquals(0, rates.seconds(0, 100, 2));
    Tool tool = Workshop.END_MILL_3.with(Workshop.cutting(1800, 500, 2, 0.25));
    assertEquals(1 / (0.5 * 3 * 30), ChainCost.secondsPerMm2(tool), 1e-12);
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

  private static void check(
      List<LevelWork> works, int stepdown, DepthSequence.Leftover leftover, String where) {
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
          steps.add(new DepthStep(pocket, z, from, true));
          from = z;
        } else if (isLevel && works.get(pocket).exposedS() > 0) {
          steps.add(new DepthStep(pocket, z, from, false));
        }
      }
      best = Math.min(best, cost(works, steps, stepdown, leftover));
    }
    List<DepthStep> found = DepthSequence.plan(works, stepdown, leftover);
    double cost = cost(works, found, stepdown, leftover);
    assertEquals(
        best,
        cost,
        1e-5 * Math.max(1, best),
        where + " " + works + " stepdown " + stepdown + " " + found);
    assertEquals(
        cost, DepthSequence.seconds(works, stepdown, leftover), 1e-9 * Math.max(1, cost), where);
  }

  /** Follows the steps; infinite when a rule is broken. */
  private static double cost(
      List<LevelWork> works, List<DepthStep> steps, int stepdown, DepthSequence.Leftover leftover) {
    double seconds = 0;
    double plane = 0;
    boolean[] shown = new boolean[works.size()];
    double[] stands = new double[works.size()];
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
        for (int i = step.level(); i < stands.length; i++) {
          stands[i] = plane;
        }
      }
    }
    for (int i = 0; i < stands.length; i++) {
      if (works.get(i).exposedS() > 0 && !shown[i]) {
        return Double.POSITIVE_INFINITY;
      }
      seconds += leftover.seconds(i, stands[i]);
    }
    return seconds;
  }
}
