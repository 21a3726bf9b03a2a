package plyscape.layup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
              new Sanding(0.1, 0.15 * random.nextDouble()),
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
}
