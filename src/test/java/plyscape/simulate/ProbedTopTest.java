package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Heights between probed places: closed forms by hand. */
class ProbedTopTest {

  private static double[] at(double x, double y, double z) {
    return new double[] {x, y, z};
  }

  @Test
  void grid_isBilinear_andKeepsItsEdgeBeyond() {
    // (x - 10) (y - 20) / 100 is bilinear itself.
    List<double[]> readings = new ArrayList<>();
    for (double x : new double[] {10, 40, 90}) {
      for (double y : new double[] {20, 50}) {
        readings.add(at(x, y, (x - 10) * (y - 20) / 100));
      }
    }
    Collections.shuffle(readings, new Random(1));
    ProbedTop top = ProbedTop.of(readings);
    assertEquals(15 * 12 / 100.0, top.heightMm(25, 32), 1e-12);
    assertEquals(60 * 29 / 100.0, top.heightMm(70, 49), 1e-12);
    assertEquals(80 * 30 / 100.0, top.heightMm(200, 200), 1e-12);
    assertEquals(24, top.highestMm(), 1e-12);
  }

  @Test
  void scattered_planeIsThePlaneInside() {
    Random random = new Random(7);
    List<double[]> readings = new ArrayList<>();
    for (int k = 0; k < 60; k++) {
      double x = random.nextDouble() * 100;
      double y = random.nextDouble() * 80;
      readings.add(at(x, y, 0.3 + 0.002 * x - 0.004 * y));
    }
    ProbedTop top = ProbedTop.of(readings);
    for (int k = 0; k < 500; k++) {
      double x = 30 + random.nextDouble() * 40;
      double y = 25 + random.nextDouble() * 30;
      assertEquals(0.3 + 0.002 * x - 0.004 * y, top.heightMm(x, y), 1e-9);
    }
  }

  @Test
  void scattered_meetsItsReadings_andIsLinearOnEdges() {
    List<double[]> readings =
        List.of(at(0, 0, 0), at(10, 0, 1), at(3, 8, 2), at(12, 11, 0.5), at(6, 3, 3));
    ProbedTop top = ProbedTop.of(readings);
    for (double[] r : readings) {
      assertEquals(r[2], top.heightMm(r[0], r[1]), 1e-9);
    }
    assertEquals(0.5, top.heightMm(5, -4), 1e-9); // nearest is the middle of the lower edge
    assertEquals(0, top.heightMm(-3, -3), 1e-9);
  }

  /**
   * Every order of the same readings gives the face with the diagonal from the leftmost, lowest.
   */
  @Test
  void squareWithoutGridNode_takesTheDiagonalFromTheLeftmost() {
    List<double[]> readings =
        new ArrayList<>(
            List.of(at(0, 0, 0), at(10, 0, 1), at(0, 10, 1), at(10, 10, 0), at(30, 5, 0)));
    for (int seed = 0; seed < 20; seed++) {
      Collections.shuffle(readings, new Random(seed));
      assertEquals(0, ProbedTop.of(readings).heightMm(5, 5), 1e-9, "seed " + seed);
    }
  }

  @Test
  void gridWithANodeMissing_isTriangles() {
    List<double[]> readings = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      for (int j = 0; j < 4; j++) {
        if (i != 3 || j != 3) {
          readings.add(at(i * 20, j * 20, i * j));
        }
      }
    }
    ProbedTop top = ProbedTop.of(readings);
    // Between (0, 0, 0) and (20, 20, 1) along the diagonal: linear, where bilinear gives a quarter.
    assertEquals(0.5, top.heightMm(10, 10), 1e-9);
    assertEquals(6, top.heightMm(60, 40), 1e-9);
  }

  @Test
  void placesInLine_areRefused_andDoublesAveraged() {
    assertThrows(
        IllegalArgumentException.class,
        () -> ProbedTop.of(List.of(at(0, 0, 0), at(5, 5, 1), at(10, 10, 2))));
    ProbedTop top =
        ProbedTop.of(List.of(at(0, 0, 0), at(0.005, 0, 0.1), at(10, 0, 0), at(0, 10, 0)));
    assertEquals(0.05, top.heightMm(0, 0), 1e-9);
  }

  /** No place lies inside another triangle's circle (Delaunay's property). */
  @Test
  void manyPlaces_heightsDontDependOnTheirOrder() {
    Random random = new Random(3);
    List<double[]> readings = new ArrayList<>();
    for (int k = 0; k < 120; k++) {
      readings.add(at(random.nextInt(25) * 4, random.nextInt(25) * 4, random.nextDouble()));
    }
    readings.sort((a, b) -> Double.compare(a[0] * 1000 + a[1], b[0] * 1000 + b[1]));
    for (int k = readings.size() - 1; k > 0; k--) {
      if (readings.get(k)[0] == readings.get(k - 1)[0]
          && readings.get(k)[1] == readings.get(k - 1)[1]) {
        readings.remove(k);
      }
    }
    ProbedTop first = ProbedTop.of(readings);
    for (int seed = 0; seed < 5; seed++) {
      Collections.shuffle(readings, new Random(seed));
      ProbedTop other = ProbedTop.of(readings);
      for (int k = 0; k < 300; k++) {
        double x = random.nextDouble() * 96;
        double y = random.nextDouble() * 96;
        assertEquals(first.heightMm(x, y), other.heightMm(x, y), 1e-9, x + " " + y);
      }
    }
  }
}
