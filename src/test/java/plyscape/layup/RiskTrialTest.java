package plyscape.layup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The closed form of the colour risk against sampling, and the bridge formula against plain
 * rejection.
 */
class RiskTrialTest {

  private static final int PANELS = 200_000;

  @Test
  void closedFormAndSampling_agreeWithinThreeStandardErrors_onRandomLayups() {
    int compared = 0;
    int overOne = 0;
    for (int seed = 1; seed <= 14; seed++) {
      Random random = new Random(seed);
      Layup layup = Layups.random(random);
      CutAllowance allowance =
          new CutAllowance(
              0.1,
              random.nextBoolean() ? Method.RSS : Method.WORST,
              0.1 * random.nextDouble(),
              0.1,
              0.15 * random.nextDouble(),
              random.nextBoolean() ? Top.MID : Top.LEAVE,
              0);
      Depths depths = DepthModel.depths(layup, allowance, true);
      for (RiskTrial.Result r : RiskTrial.run(layup, allowance, PANELS, 1000 + seed)) {
        double p = depths.of(r.plyNumber()).risk();
        double error = Math.sqrt(p * (1 - p) / PANELS);
        double off = Math.abs(r.risk() - p);
        // A single panel is the least that sampling can tell.
        assertTrue(off <= 3 * error + 1.0 / PANELS, "seed " + seed + " " + r + " closed form " + p);
        if (p > 1e-4) {
          compared++;
          overOne += off > error ? 1 : 0;
        }
      }
    }
    // Enough plies with a risk that can be told, and no more misses of one standard error than
    // chance gives (31.7 %).
    assertTrue(compared >= 40, "only " + compared);
    assertTrue(
        overOne < 0.317 * compared + 3 * Math.sqrt(0.317 * 0.683 * compared),
        overOne + " of " + compared);
  }

  @Test
  void sameSeed_sameCounts() {
    Layup layup = Layups.random(new Random(5));
    assertEquals(
        RiskTrial.run(layup, Layups.standard(), 2000, 7),
        RiskTrial.run(layup, Layups.standard(), 2000, 7));
  }

  /**
   * The bridge formula by brute force: draw panels without knowing any formula, keep those whose
   * total comes out as measured (within 0.001 mm), and look how far the boundary inside scatters.
   */
  @Test
  void bridgeFormula_againstRejectionSampling() {
    double[] u = {0.12, 0.06, 0.09, 0.15, 0.03};
    Layup layup = panel(u);
    SeededNormals normals = new SeededNormals(42);
    double[] squares = new double[5];
    int kept = 0;
    for (int p = 0; p < 3_000_000; p++) {
      double[] error = new double[6];
      for (int i = 0; i < 5; i++) {
        error[i + 1] = error[i] + normals.next() * u[i] / 3;
      }
      if (Math.abs(error[5]) < 0.001) {
        kept++;
        for (int i = 1; i < 5; i++) {
          squares[i] += error[i] * error[i];
        }
      }
    }
    assertTrue(kept > 25_000, "kept " + kept);
    PressedDepths pressed = new PressedDepths(layup);
    for (int i = 1; i < 5; i++) {
      double expected = pressed.toleranceMm(LayerStack.bottomOf(i), Method.RSS);
      // Relative standard error of a deviation from N values: 1 / sqrt(2 N).
      assertEquals(
          expected, 3 * Math.sqrt(squares[i] / kept), expected * 3 / Math.sqrt(2.0 * kept) + 1e-4);
    }
  }

  private static Layup panel(double... tolerances) {
    List<Ply> plies = new java.util.ArrayList<>();
    for (int i = 0; i < tolerances.length; i++) {
      plies.add(new Ply(i + 1, "p" + i, 0, 1, tolerances[i], 0, ""));
    }
    return new Layup("l", "", plies, new GlueLine(0, 0), Measured.NOTHING, 0)
        .withThickness(tolerances.length, 0);
  }
}
