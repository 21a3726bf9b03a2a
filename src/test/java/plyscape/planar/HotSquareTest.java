package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The square around (0, 0): west and south sides are its own, east and north sides aren't. */
class HotSquareTest {

  private static void meets(boolean wanted, int x0, int y0, int x1, int y1) {
    String what = x0 + " " + y0 + " to " + x1 + " " + y1;
    assertEquals(wanted, HotSquare.meets(0, 0, x0, y0, x1, y1), what);
    assertEquals(wanted, HotSquare.meets(0, 0, x1, y1, x0, y0), what + ", backwards");
    assertEquals(wanted, HotSquare.meets(7, -9, x0 + 7, y0 - 9, x1 + 7, y1 - 9), what + ", moved");
  }

  @Test
  void throughTheMiddle_meets() {
    meets(true, -3, 0, 4, 0);
    meets(true, 0, -3, 0, 4);
    meets(true, -2, -2, 2, 2);
    meets(true, -3, 1, 3, -1);
  }

  @Test
  void endsInTheMiddle_meets() {
    meets(true, 0, 0, 5, 3);
    meets(true, 0, 0, -1, 1);
  }

  @Test
  void beyondItsSides_misses() {
    meets(false, 1, -4, 1, 4);
    meets(false, -1, -4, -1, 4);
    meets(false, -4, 1, 4, 1);
    meets(false, -4, -1, 4, -1);
  }

  @Test
  void sameBoxButPastACorner_misses() {
    meets(false, 0, 2, 2, 0);
    meets(false, 0, 3, 2, -1);
    meets(false, -2, 0, 0, -2);
  }

  @Test
  void cutsACornerOff_meets() {
    meets(true, -1, 0, 1, 1);
    meets(true, 0, -1, 1, 1);
  }

  @Test
  void touchesOnlyTheSouthWestCorner_meets_asItIsOneOfItsOwn() {
    meets(true, -1, 0, 0, -1);
  }

  @Test
  void touchesOnlyTheNorthWestCorner_misses() {
    meets(false, -1, 0, 0, 1);
  }

  @Test
  void touchesOnlyTheSouthEastCorner_misses() {
    meets(false, 0, -1, 1, 0);
  }

  @Test
  void touchesOnlyTheNorthEastCorner_misses() {
    meets(false, 0, 1, 1, 0);
  }

  @Test
  void throughTwoOppositeCorners_meets() {
    meets(true, -2, 2, 2, -2);
    meets(true, -1, -1, 1, 1);
  }

  @Test
  void largestPanel_isExact() {
    int far = 1 << 21;
    assertTrue(HotSquare.meets(0, 0, -far, -far, far, far));
    assertTrue(HotSquare.meets(0, 0, -far, 1 - far, far, far));
    assertFalse(HotSquare.meets(0, 0, -far, 1 - far, far, far + 1));
    assertFalse(HotSquare.meets(0, 1, -far, -far, far, far));
  }

  /**
   * Every segment on a small lattice against the definition: some share t of it with west <= x(t) <
   * east and south <= y(t) < north, as intervals of t.
   */
  @Test
  void allShortSegments_areWhatTheDefinitionSays() {
    int n = 4;
    int met = 0;
    for (int x0 = -n; x0 <= n; x0++) {
      for (int y0 = -n; y0 <= n; y0++) {
        for (int x1 = -n; x1 <= n; x1++) {
          for (int y1 = -n; y1 <= n; y1++) {
            if (x0 != x1 || y0 != y1) {
              boolean wanted = new Interval().cut(x0, x1).cut(y0, y1).any();
              assertEquals(
                  wanted,
                  HotSquare.meets(0, 0, x0, y0, x1, y1),
                  x0 + " " + y0 + " to " + x1 + " " + y1);
              met += wanted ? 1 : 0;
            }
          }
        }
      }
    }
    assertTrue(met > 1000, met + " met");
  }

  /** Shares t of a segment, as fractions; either end may be left out. */
  private static final class Interval {
    private long low = 0;
    private long lowOf = 1;
    private boolean lowIn = true;
    private long high = 1;
    private long highOf = 1;
    private boolean highIn = true;
    private boolean empty;

    /** Keeps where -1/2 <= from + t (to - from) < 1/2. */
    Interval cut(int from, int to) {
      int by = to - from;
      if (by == 0) {
        empty |= from != 0;
        return this;
      }
      boolean rises = by > 0;
      long atWest = rises ? -1 - 2 * from : 1 + 2 * from;
      long atEast = rises ? 1 - 2 * from : -1 + 2 * from;
      long of = 2L * Math.abs(by);
      raise(rises ? atWest : atEast, of, rises);
      lower(rises ? atEast : atWest, of, !rises);
      return this;
    }

    private void raise(long part, long of, boolean in) {
      long order = Long.compare(part * lowOf, low * of);
      lowIn = order > 0 ? in : order == 0 ? lowIn && in : lowIn;
      if (order > 0) {
        low = part;
        lowOf = of;
      }
    }

    private void lower(long part, long of, boolean in) {
      long order = Long.compare(part * highOf, high * of);
      highIn = order < 0 ? in : order == 0 ? highIn && in : highIn;
      if (order < 0) {
        high = part;
        highOf = of;
      }
    }

    boolean any() {
      long order = Long.compare(low * highOf, high * lowOf);
      return !empty && (order < 0 || order == 0 && lowIn && highIn);
    }
  }

  @Test
  void rounded_halvesGoUp_onBothSidesOfZero() {
    assertEquals(1, HotSquare.rounded(1, 1, 2));
    assertEquals(0, HotSquare.rounded(-1, 1, 2));
    assertEquals(2, HotSquare.rounded(3, 1, 2));
    assertEquals(-1, HotSquare.rounded(-3, 1, 2));
    assertEquals(-1, HotSquare.rounded(-3, -1, -2));
  }

  @Test
  void rounded_nearHalvesOfLargestPanel_areExact() {
    long whole = 2_000_000_000_001L;
    long half = 1_000_000_000_000L; // just below a half of it
    assertEquals(0, HotSquare.rounded(1, half, whole));
    assertEquals(1, HotSquare.rounded(1, half + 1, whole));
    assertEquals(1 << 20, HotSquare.rounded(1 << 21, half + 1, whole));
  }

  @Test
  void rounded_others_areNearest() {
    assertEquals(3, HotSquare.rounded(10, 1, 3));
    assertEquals(7, HotSquare.rounded(10, 2, 3));
    assertEquals(-3, HotSquare.rounded(-10, 1, 3));
    assertEquals(10, HotSquare.rounded(10, 3, 3));
  }
}
