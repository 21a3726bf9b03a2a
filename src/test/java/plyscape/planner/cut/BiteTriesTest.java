package plyscape.planner.cut;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import plyscape.simulate.Bite;

/** Bites that mending helps against, and one that it doesn't. */
class BiteTriesTest {

  private static Bite bite(String file, double x, double biteMm) {
    return new Bite(file, 140, x, 48, 3.5, biteMm, 0.5);
  }

  @Test
  void biteThatStays_isGivenUp() {
    BiteTries tries = new BiteTries();
    for (int time = 0; time < 3; time++) {
      assertTrue(tries.worthwhile(bite("01.nc", 16, 0.9)));
    }
    assertFalse(tries.worthwhile(bite("01.nc", 16, 0.9)));
    assertTrue(tries.worthwhile(bite("02.nc", 16, 0.9)), "another program's");
  }

  @Test
  void bitesThatShrinkOrMove_areMendedOn() {
    BiteTries tries = new BiteTries();
    for (int time = 0; time < 9; time++) {
      assertTrue(tries.worthwhile(bite("01.nc", 16, 3 - 0.2 * time)));
    }
    for (int time = 0; time < 9; time++) {
      assertTrue(tries.worthwhile(bite("01.nc", 17 + time, 0.9)));
    }
  }
}
