package plyscape.toolpath.ring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.toolpath.lattice.Ring;

/** Short ways through places where a cutter just fits. */
class TightSpotsTest {

  private static final double REACH = 0.25;

  private static TightSpots row(TightSpots.Free free, double... x) {
    TightSpots spots = new TightSpots(REACH, free);
    for (double at : x) {
      spots.add(at, 1, 0);
    }
    return spots;
  }

  @Test
  void rowOfPoints_isOneWayFromEndToEnd_whateverTheirOrder() {
    List<Ring> ways = row((ax, ay, bx, by) -> true, 0.3, 0.1, 0.5, 0.2, 0.4, 0.6).ways();
    assertEquals(1, ways.size());
    assertEquals(0.5, ways.get(0).lengthMm(), 1e-12);
    assertFalse(ways.get(0).closed());
    assertEquals(0, ways.get(0).index());
  }

  @Test
  void wallBetween_dividesARow() {
    List<Ring> ways =
        row((ax, ay, bx, by) -> ax < 0.35 == bx < 0.35, 0.1, 0.2, 0.3, 0.4, 0.5).ways();
    assertEquals(2, ways.size());
    for (Ring way : ways) {
      boolean left = way.x()[0] < 0.35;
      for (double x : way.x()) {
        assertEquals(left, x < 0.35);
      }
    }
  }

  @Test
  void farApart_areTakenEachByItself() {
    assertEquals(3, row((ax, ay, bx, by) -> true, 0, 0.26, 0.52).ways().size());
  }

  @Test
  void someRoom_isCoveredByATurn_andTheWayGoesThroughItsMiddle() {
    TightSpots spots = new TightSpots(REACH, (ax, ay, bx, by) -> true);
    spots.add(0, 0, 0);
    spots.add(0.2, 0, 0.05);
    List<Ring> ways = spots.ways();
    assertEquals(1, ways.size());
    Ring way = ways.get(0);
    double farthest = 0;
    boolean middle = false;
    for (int i = 0; i < way.size(); i++) {
      double off = Math.hypot(way.x()[i] - 0.2, way.y()[i]);
      farthest = Math.max(farthest, way.x()[i]);
      middle |= off < 1e-12;
      assertTrue(off < 0.05 + 1e-12 || way.x()[i] == 0, "only the turn and the point");
    }
    assertEquals(0.25, farthest, 1e-12);
    assertTrue(middle);
  }

  @Test
  void branches_areAllTaken() {
    TightSpots spots = new TightSpots(REACH, (ax, ay, bx, by) -> true);
    for (int i = -3; i <= 3; i++) {
      spots.add(0.2 * i, 0, 0);
      if (i > 0) {
        spots.add(0, 0.2 * i, 0);
      }
    }
    double length = spots.ways().stream().mapToDouble(Ring::lengthMm).sum();
    int points = spots.ways().stream().mapToInt(Ring::size).sum();
    assertEquals(10, points);
    assertTrue(length > 0.2 * 7);
  }
}
