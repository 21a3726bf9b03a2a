package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class GridUnitsTest {

  @Test
  void of_nearest_andBack() {
    assertEquals(1235, GridUnits.of(1.2346));
    assertEquals(-1235, GridUnits.of(-1.2346));
    for (int units = -3000; units < 3000; units += 7) {
      assertEquals(units, GridUnits.of(GridUnits.mm(units)));
    }
  }

  @Test
  void mm_printsThreeDecimalsAtMost() {
    for (int units = 0; units < 5000; units++) {
      assertTrue(Double.toString(GridUnits.mm(units)).matches("\\d+\\.\\d{1,3}"), units + "");
    }
  }

  @Test
  void turn_leftIsPositive_rightNegative_straightNought() {
    assertEquals(1, GridUnits.turn(0, 0, 1, 0, 1, 1));
    assertEquals(-1, GridUnits.turn(0, 0, 1, 0, 1, -1));
    assertEquals(0, GridUnits.turn(0, 0, 2, 1, 4, 2));
  }

  /** In doubles or ints these would come out as 0: the products differ by 1 in 2^42. */
  @Test
  void turn_onTheLargestPanel_isExact() {
    int far = 1 << 21;
    assertEquals(1, GridUnits.turn(0, 0, far, far - 1, far + 1, far));
    assertEquals(-1, GridUnits.turn(0, 0, far + 1, far, far, far - 1));
  }

  @Test
  void cross_ofASquareRoundItsCorners_isTwiceItsArea() {
    long sum =
        GridUnits.cross(3, 4, 8, 4)
            + GridUnits.cross(8, 4, 8, 9)
            + GridUnits.cross(8, 9, 3, 9)
            + GridUnits.cross(3, 9, 3, 4);
    assertEquals(50, sum);
  }
}
