package plyscape.toolpath.slot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.toolpath.lattice.Ring;

/** Rings over a straight way 10 mm long, 0.4 mm from side to side. */
class SlotCoverTest {

  private static final SlotCover COVER =
      new SlotCover(
          List.of(
              new SlotWay(
                  new double[] {0, 4, 10},
                  new double[] {0, 0, 0},
                  new double[] {0, 4, 10},
                  new double[] {0.2, 0.2, 0.2},
                  new double[] {0, 4, 10},
                  new double[] {-0.2, -0.2, -0.2},
                  false)));

  private static void assertCovered(boolean expected, double left, double right, double half) {
    Ring ring =
        new Ring(
            0,
            true,
            new double[] {left, right, right, left},
            new double[] {-half, -half, half, half});
    assertEquals(expected, COVER.of(ring));
  }

  @Test
  void ring_isCoveredToASkinOfTheWall() {
    assertCovered(true, 0, 10, 0.2);
    assertCovered(true, -0.02, 10.02, 0.22);
    assertCovered(true, 1, 9, 0.1);
    assertCovered(false, -0.05, 10, 0.2);
    assertCovered(false, 0, 10.05, 0.2);
    assertCovered(false, 0, 10, 0.24);
  }

  /** Its corners are covered, the bulge between them isn't. */
  @Test
  void ringBetweenItsPoints_isLookedAtToo() {
    Ring across = new Ring(0, false, new double[] {0, 5, 10}, new double[] {0.2, 0.6, 0.2});
    assertEquals(false, COVER.of(across));
    Ring far = new Ring(0, false, new double[] {20, 21}, new double[] {5, 5});
    assertEquals(false, COVER.of(far));
  }
}
