package plyscape.layup.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Layup;
import plyscape.layup.Layups;
import plyscape.layup.Method;
import plyscape.layup.Ply;
import plyscape.layup.Sanding;
import plyscape.layup.Top;

class ThinPlyAdviceTest {

  private static final CutAllowance PLAIN =
      new CutAllowance(0, Method.RSS, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 0);

  private static List<ThinPlyAdvice> advice(Layup layup, CutAllowance allowance) {
    return ThinPlyAdvice.of(layup, allowance, 0.02, layup.measured().centre());
  }

  @Test
  void reliableLayup_noAdvice() {
    assertTrue(advice(Layups.of(0.04, 0.01, 0.04, 0.9, 0.9, 0.9), Layups.standard()).isEmpty());
  }

  @Test
  void handWorked_threePlies() {
    // Third ply: boundary at its bottom sqrt(3 * 0.01) = 0.17321, with 0.03 and 0.05: sqrt(0.03 +
    // 0.0034) = 0.18276.
    Layup layup = Layups.of(0, 0, 0.1, 0.6, 0.6, 0.36);
    ThinPlyAdvice advice = advice(layup, PLAIN).get(0);
    assertEquals(3, advice.plyNumber());
    assertEquals(2 * Math.sqrt(0.0334), advice.thicknessMm(), 1e-12);
    // Passes when 3 u^2 + 0.0034 <= 0.18^2.
    assertEquals(Math.sqrt((0.0324 - 0.0034) / 3), advice.toleranceMm(), 1e-8);
    assertNull(advice.flatnessMm());
    // Total measured to 0.02: the top edge lies f = 1.2 / 1.56 down, its error is (1 - f) of the
    // two
    // plies above, f of the one below and of the reading. That is better than a bottom read.
    double f = 1.2 / 1.56;
    double squares = 0.01 * (2 * (1 - f) * (1 - f) + f * f) + 0.0004 * f * f + 0.0034;
    assertEquals(0, advice.best().bottomOfPly());
    assertEquals(Math.sqrt(squares), advice.best().neededMm(), 1e-9);
    assertTrue(advice.best().helps() && advice.best().passes());
  }

  @Test
  void everythingMeasured_nothingLeftToMeasure() {
    Layup layup =
        Layups.of(0, 0, 0.1, 0.3, 0.3)
            .withBottoms(new java.util.TreeMap<>(java.util.Map.of(1, 0.3)), 0.2)
            .withThickness(0.6, 0.2);
    for (ThinPlyAdvice advice : advice(layup, PLAIN)) {
      assertNull(advice.best());
    }
  }

  /** What is advised is tried: at the stated value the ply passes, just beyond it doesn't. */
  @Test
  void advice_holdsWhenFollowed_onRandomLayups() {
    int tried = 0;
    for (int seed = 1; seed <= 60; seed++) {
      Layup layup = Layups.random(new Random(seed));
      for (ThinPlyAdvice advice : advice(layup, Layups.standard())) {
        tried++;
        String what = "seed " + seed + " ply " + advice.plyNumber();
        if (layup.measured().bottomsMm().isEmpty() && layup.measured().thicknessMm() == null) {
          assertTrue(
              reliable(thicker(layup, advice.plyNumber(), advice.thicknessMm() + 1e-9), advice),
              what);
          assertFalse(
              reliable(thicker(layup, advice.plyNumber(), advice.thicknessMm() - 1e-6), advice),
              what);
        }
        if (advice.flatnessMm() != null) {
          assertTrue(reliable(layup.withFlatness(advice.flatnessMm()), advice), what);
          assertFalse(reliable(layup.withFlatness(advice.flatnessMm() + 1e-6), advice), what);
        }
        if (advice.toleranceMm() != null) {
          assertTrue(reliable(capped(layup, advice.toleranceMm()), advice), what);
          assertFalse(reliable(capped(layup, advice.toleranceMm() + 1e-6), advice), what);
        }
        for (ThinPlyAdvice.Measurement m :
            new ThinPlyAdviser(layup, Layups.standard(), 0.02, layup.measured().centre())
                .measurements(advice.plyNumber())) {
          assertTrue(advice.best().neededMm() <= m.neededMm() + 1e-9, what);
        }
      }
    }
    assertTrue(tried > 60, "tried " + tried);
  }

  private static boolean reliable(Layup layup, ThinPlyAdvice advice) {
    return DepthModel.depths(layup, Layups.standard(), true).of(advice.plyNumber()).reliable();
  }

  private static Layup thicker(Layup l, int number, double thickness) {
    return withPlies(l, number, thickness, Double.MAX_VALUE);
  }

  private static Layup capped(Layup l, double tolerance) {
    return withPlies(l, 0, 0, tolerance);
  }

  private static Layup withPlies(Layup l, int number, double thickness, double most) {
    List<Ply> plies = new ArrayList<>();
    for (Ply p : l.plies()) {
      plies.add(
          new Ply(
              p.number(),
              p.name(),
              p.rgb(),
              p.number() == number ? thickness : p.thicknessMm(),
              Math.min(p.toleranceMm(), most),
              p.grainDeg(),
              p.wood()));
    }
    return l.withPlies(plies);
  }
}
