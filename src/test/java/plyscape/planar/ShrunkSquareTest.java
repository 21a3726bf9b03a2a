package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Squares shrunk by more and less than half their side; areas are closed forms. */
class ShrunkSquareTest {

  private static double leftMm2(int sideUnits, double distanceUnits) {
    int s = sideUnits;
    Linework lines = new Linework(1);
    new OffsetOutlines(lines, 0, 5)
        .shrunk(new int[] {0, s, s, 0, 0}, new int[] {0, 0, s, s, 0}, distanceUnits);
    PlanarMap map = PlanarMap.of(lines);
    return new PolygonAssembler(map.chains(), map.faces(), 1, null)
        .rings(f -> map.winding(f, 0) > 0).stream()
            .mapToDouble(ring -> ring.area2() / 2.0 / GridUnits.perMm2())
            .sum();
  }

  @Test
  void squareWithRoom_keepsItsMiddle() {
    assertEquals(0.1 * 0.1, leftMm2(900, 400), 1e-9);
  }

  @Test
  void squareWithoutRoom_vanishes() {
    for (int side : new int[] {500, 600, 700, 750, 799}) {
      assertEquals(0, leftMm2(side, 400), 1e-9, side + " units");
    }
  }
}
