package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SetsTest {

  @Test
  void unjoined_eachIsItsOwn() {
    Sets sets = new Sets(3);
    assertEquals(2, sets.find(2));
    assertArrayEquals(new int[] {0, 1, 2}, sets.numbers());
  }

  @Test
  void name_isTheSmallest_whateverTheOrder() {
    int[][][] orders = {
      {{5, 3}, {3, 1}, {4, 2}}, {{1, 3}, {2, 4}, {5, 1}}, {{3, 5}, {4, 2}, {5, 1}, {1, 3}}
    };
    for (int[][] order : orders) {
      Sets sets = new Sets(6);
      for (int[] pair : order) {
        assertEquals(Math.min(sets.find(pair[0]), sets.find(pair[1])), sets.join(pair[0], pair[1]));
      }
      assertEquals(1, sets.find(5));
      assertEquals(1, sets.find(3));
      assertEquals(2, sets.find(4));
      assertArrayEquals(new int[] {0, 1, 2, 1, 2, 1}, sets.numbers());
    }
  }

  @Test
  void longChain_isOneSet() {
    Sets sets = new Sets(1000);
    for (int i = 999; i > 0; i--) {
      sets.join(i, i - 1);
    }
    assertEquals(0, sets.find(999));
  }
}
