package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ChainTest {

  @Test
  void rightTriangle_lengthAndTwiceItsArea() {
    Chain ring = new Chain(new int[] {1, 4, 4, 1}, new int[] {1, 1, 5, 1}, false, 2, 0);
    assertEquals(3 + 4 + 5, ring.length());
    assertEquals(3 * 4, ring.cross2());
    assertEquals(3, ring.last());
    Chain back = new Chain(new int[] {1, 4, 4, 1}, new int[] {1, 5, 1, 1}, false, 0, 2);
    assertEquals(-12, back.cross2());
  }

  @Test
  void sidesAreThoseGiven() {
    Chain chain = new Chain(new int[] {0, 1}, new int[] {0, 0}, true, 7, 9);
    assertEquals(7, chain.left());
    assertEquals(9, chain.right());
  }
}
