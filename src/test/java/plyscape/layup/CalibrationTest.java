package plyscape.layup;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class CalibrationTest {

  private static final int TRIALS = 2000;

  @Test
  void oneEdge_statedTolerances_weightedMean() {
    Layup layup = Layups.of(0, 0, 0.1, 1, 1, 1);
    // Weights 1/0.03^2 and 1/0.06^2: four to one.
    List<Reading> readings =
        List.of(new Reading(2, 1, false, 1.00, 0.03), new Reading(3, 1, false, 1.05, 0.06));
    Calibration.Boundary b = Calibration.of(layup, readings, 0.1, false).boundaries().get(0);
    assertEquals(1.01, b.depthMm(), 1e-12);
    assertEquals(1 / Math.sqrt(1 / 0.0009 + 1 / 0.0036), b.toleranceMm(), 1e-9);
    assertEquals(1.959964 / 3 * b.toleranceMm(), b.halfWidth95Mm(), 1e-6);
  }

  @Test
  void topReading_tellsTheBottomAboveThroughTheGlueLine() {
    Layup layup = Layups.of(0.05, 0.04, 0.1, 1, 1, 1);
    Calibration c = Calibration.of(layup, List.of(new Reading(2, 2, true, 1.10, 0.03)), 0.1, false);
    assertEquals(1, c.boundaries().get(0).plyNumber());
    assertEquals(1.05, c.boundaries().get(0).depthMm(), 1e-9);
    assertEquals(0.05, c.boundaries().get(0).toleranceMm(), 1e-6);
  }

  @Test
  void crossedReadings_orderKept_positiveGlueLine() {
    // A bottom read below the top of the next ply: the glue line keeps a hundredth of its 0.05 mm.
    Layup layup = Layups.of(0.05, 3, 0.1, 1, 1, 1);
    List<Reading> readings =
        List.of(new Reading(2, 1, false, 1.10, 0.03), new Reading(3, 2, true, 1.00, 0.03));
    Calibration c = Calibration.of(layup, readings, 0.1, false);
    assertTrue(c.ordered());
    assertEquals(1.05 - 0.00025, c.boundaries().get(0).depthMm(), 1e-4);
    List<Reading> crossed =
        List.of(new Reading(2, 1, false, 1.6, 0.03), new Reading(3, 2, false, 1.5, 0.03));
    Calibration d = Calibration.of(Layups.of(0, 0, 0.1, 1, 1, 1), crossed, 0.1, false);
    assertEquals(1.55 - 0.005, d.boundaries().get(0).depthMm(), 1e-9);
    assertEquals(1.55 + 0.005, d.boundaries().get(1).depthMm(), 1e-9);
  }

  @Test
  void measuredThickness_boundsTheLast_andOldBottomsStay() {
    Layup layup =
        Layups.of(0, 0, 0.1, 1, 1, 1)
            .withBottoms(new TreeMap<>(Map.of(1, 0.97)), 0.02)
            .withThickness(3.0, 0.02);
    Calibration c = Calibration.of(layup, List.of(new Reading(2, 2, false, 3.2, 0.03)), 0.1, false);
    assertEquals(0.97, c.bottomsMm().get(1), 1e-9);
    assertEquals(2.99, c.bottomsMm().get(2), 1e-9);
    assertEquals(0.03, c.toleranceMm(), 1e-12);
  }

  @Test
  void outlier_namedAndSetAside() {
    Layup layup = Layups.of(0.04, 0.01, 0.05, 0.9, 0.9, 0.9, 0.9);
    Random random = new Random(3);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      int ply = 1 + i % 3;
      readings.add(
          new Reading(2 + i, ply, false, 0.94 * ply - 0.04 + 0.02 * random.nextGaussian(), 0));
    }
    readings.add(new Reading(20, 2, false, 2.2, 0));
    Calibration c = Calibration.of(layup, readings, 0.1, false);
    assertEquals(List.of(20), c.outliers().stream().map(o -> o.reading().row()).toList());
    assertEquals(0.36, c.outliers().get(0).offMm(), 0.05);
    assertEquals(1.84, c.bottomsMm().get(2), 0.04);
  }

  @Test
  void scatterBeyondTheStated_widensTheInterval() {
    Layup layup = Layups.of(0, 0, 0.05, 1, 1, 1);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      readings.add(new Reading(2 + i, 1, false, 1 + (i % 2 == 0 ? 0.05 : -0.05), 0.06));
    }
    Calibration c = Calibration.of(layup, readings, 0.1, false);
    assertEquals(0.05 * Math.sqrt(8.0 / 7) / 0.02, c.scatterFactor(), 1e-9);
    assertEquals(7, c.degrees());
  }

  /**
   * Known boundaries come back within the stated 95 % interval in 95 +-2 % of 2000 trials: noise
   * stated.
   */
  @Test
  void coverage_statedNoise() {
    assertCoverage(true, 11);
  }

  /** The same when no tolerance is stated and scatter is told from the readings. */
  @Test
  void coverage_noiseFromScatter() {
    assertCoverage(false, 12);
  }

  private static void assertCoverage(boolean stated, int seed) {
    Random random = new Random(seed);
    int oneHits = 0;
    int hits = 0;
    int all = 0;
    int setAside = 0;
    for (int t = 0; t < TRIALS; t++) {
      double glueTolerance = 0.01 + 0.02 * random.nextDouble();
      Layup layup = Layups.of(0.06, glueTolerance, 0.05, 0.9, 0.6, 0.9, 0.6, 0.9);
      double sigma = 0.01 + 0.02 * random.nextDouble();
      double[] truth = truth(layup, random);
      List<Reading> readings = new ArrayList<>();
      for (int ply = 1; ply <= 4; ply++) {
        int bottoms = 1 + random.nextInt(3);
        int tops = random.nextInt(3) + (bottoms == 1 ? 1 : 0);
        for (int i = 0; i < bottoms + tops; i++) {
          boolean top = i >= bottoms;
          double depth = truth[top ? 2 * ply : 2 * ply - 1] + sigma * random.nextGaussian();
          readings.add(
              new Reading(
                  2 + readings.size(), top ? ply + 1 : ply, top, depth, stated ? 3 * sigma : 0));
        }
      }
      Calibration c = Calibration.of(layup, readings, 0.1, false);
      setAside += c.outliers().size();
      int chosen = random.nextInt(c.boundaries().size());
      for (int i = 0; i < c.boundaries().size(); i++) {
        Calibration.Boundary b = c.boundaries().get(i);
        boolean hit = Math.abs(b.depthMm() - truth[2 * b.plyNumber() - 1]) <= b.halfWidth95Mm();
        all++;
        hits += hit ? 1 : 0;
        oneHits += hit && i == chosen ? 1 : 0;
      }
    }
    assertEquals(0.95, (double) oneHits / TRIALS, 0.02, "one boundary a trial");
    assertEquals(0.95, (double) hits / all, 0.01, "all boundaries");
    assertTrue(setAside <= 10, "good readings set aside: " + setAside);
  }

  private static double[] truth(Layup layup, Random random) {
    LayerStack stack = LayerStack.of(layup);
    double[] truth = new double[stack.layers() + 1];
    for (int i = 0; i < stack.layers(); i++) {
      truth[i + 1] =
          truth[i] + stack.thicknessMm(i) + random.nextGaussian() * stack.toleranceMm(i) / 3;
    }
    return truth;
  }

  /**
   * The fit in order against a brute force search over which constraints bind, on random small
   * chains.
   */
  @Test
  void chainFit_againstAllActiveSets() {
    for (int seed = 1; seed <= 200; seed++) {
      Random random = new Random(seed);
      int n = 2 + random.nextInt(4);
      double[] w = new double[n];
      double[] y = new double[n];
      double[] gap = new double[n];
      double[] start = new double[n];
      for (int i = 0; i < n; i++) {
        w[i] = 0.5 + random.nextDouble();
        y[i] = 3 * random.nextDouble();
        gap[i] = 0.2 * random.nextDouble();
        start[i] = 0.5 + 0.3 * i;
      }
      double[] x = new ChainFit(w, y, new double[n], new double[n]).ordered(start, gap, 0.4, 2.6);
      double best = bruteForce(w, y, gap, 0.4, 2.6);
      assertEquals(best, cost(w, y, x), 1e-9, "seed " + seed);
      for (int i = 0; i + 1 < n; i++) {
        assertTrue(x[i + 1] - x[i] >= gap[i] - 1e-9, "seed " + seed);
      }
    }
  }

  private static double cost(double[] w, double[] y, double[] x) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += w[i] * (x[i] - y[i]) * (x[i] - y[i]);
    }
    return sum;
  }

  /**
   * Every way to glue neighbours into blocks: each block is the mean of its shifted values, cut to
   * its bounds.
   */
  private static double bruteForce(
      double[] w, double[] y, double[] gap, double least, double greatest) {
    int n = w.length;
    double best = Double.POSITIVE_INFINITY;
    for (int glued = 0; glued < 1 << (n - 1); glued++) {
      double[] x = new double[n];
      int from = 0;
      for (int i = 0; i < n; i++) {
        if (i == n - 1 || (glued >> i & 1) == 0) {
          double sum = 0;
          double weight = 0;
          double shift = 0;
          double[] shifts = new double[n];
          for (int k = from; k <= i; k++) {
            shifts[k] = shift;
            sum += w[k] * (y[k] - shift);
            weight += w[k];
            shift += gap[k];
          }
          double base = sum / weight;
          base = from == 0 ? Math.max(base, least) : base;
          base = i == n - 1 ? Math.min(base, greatest - shifts[i]) : base;
          for (int k = from; k <= i; k++) {
            x[k] = base + shifts[k];
          }
          from = i + 1;
        }
      }
      boolean feasible = x[0] >= least - 1e-12 && x[n - 1] <= greatest + 1e-12;
      for (int i = 0; i + 1 < n; i++) {
        feasible &= x[i + 1] - x[i] >= gap[i] - 1e-12;
      }
      if (feasible) {
        best = Math.min(best, cost(w, y, x));
      }
    }
    return best;
  }

  /**
   * Two-sided 95 % and 99 % points of Student's t, standard tables (from memory; any statistics
   * text).
   */
  @Test
  void student_table() {
    assertEquals(12.706, StudentTail.halfWidth(0.95, 1), 5e-4);
    assertEquals(4.303, StudentTail.halfWidth(0.95, 2), 5e-4);
    assertEquals(3.182, StudentTail.halfWidth(0.95, 3), 5e-4);
    assertEquals(2.776, StudentTail.halfWidth(0.95, 4), 5e-4);
    assertEquals(2.228, StudentTail.halfWidth(0.95, 10), 5e-4);
    assertEquals(2.750, StudentTail.halfWidth(0.99, 30), 5e-4);
    assertEquals(0.05, StudentTail.chiSquareAbove(18.307, 10), 1e-3);
    assertEquals(0.001, StudentTail.chiSquareAbove(10.828, 1), 3e-4);
    assertArrayEquals(
        new double[] {1, 2},
        LinearSystem.solve(new double[][] {{0, 2}, {3, 1}}, new double[] {4, 5}));
  }
}
