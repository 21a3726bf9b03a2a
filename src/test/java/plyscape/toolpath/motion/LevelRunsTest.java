package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Lengths and depths worked out by hand. */
class LevelRunsTest {

  private static final double[] LEVELS = {1, 2, 3};

  /** Sections a mm apart. */
  private final double[] way = new double[101];

  private final double[] standing = new double[101];

  LevelRunsTest() {
    Arrays.setAll(way, i -> i);
    Arrays.fill(standing, 3);
  }

  private void stands(int first, int last, double depth) {
    Arrays.fill(standing, first, last + 1, depth);
  }

  private List<LevelRuns.Place> runs() {
    LevelRuns runs = new LevelRuns(way, standing, LEVELS, 8);
    List<LevelRuns.Place> places = runs.from(0);
    double[] gone = standing.clone();
    for (LevelRuns.Place place : places) {
      int i = place.section();
      assertEquals(gone[i], place.goneMm(), 1e-9);
      assertTrue(place.depthMm() - gone[i] <= 1 + 1e-9, "a stepdown at most");
      gone[i] = Math.max(gone[i], place.depthMm());
    }
    for (double depth : gone) {
      assertTrue(places.isEmpty() || depth == 3, "down to the floor everywhere");
    }
    return places;
  }

  private double lengthMm(List<LevelRuns.Place> places) {
    double sum = 0;
    for (int k = 1; k < places.size(); k++) {
      sum += Math.abs(places.get(k).section() - places.get(k - 1).section());
    }
    return sum;
  }

  @Test
  void highWoodInTheMiddleIsCutWhereItStands() {
    stands(10, 90, 2);
    stands(40, 50, 0);
    // Forth at 1, back at 2 and forth at 3 over the ten mm and what leads out of them.
    List<LevelRuns.Place> places = runs();
    assertEquals(100 + 2 * 12, lengthMm(places), 4);
    assertEquals(100, places.get(places.size() - 1).section());
  }

  @Test
  void neighbouringRestsAreCutAsOne() {
    stands(40, 45, 1);
    stands(50, 55, 1);
    // There and back once more.
    assertEquals(100 + 2 * 17, lengthMm(runs()), 4);
  }

  @Test
  void whatStandsAtOneEndIsReachedFromTheOther() {
    stands(0, 5, 2);
    List<LevelRuns.Place> places = runs();
    assertEquals(100, places.get(0).section());
    assertEquals(0, places.get(places.size() - 1).section());
  }

  @Test
  void nothingIsToldWhereBothEndsStand() {
    stands(0, 100, 2);
    assertTrue(runs().isEmpty());
  }
}
