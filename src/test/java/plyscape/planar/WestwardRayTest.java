package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Half-edges are 2c along chain c and 2c + 1 against it; the one asked for has the point left. */
class WestwardRayTest {

  private static Chain line(int x0, int y0, int x1, int y1) {
    return new Chain(new int[] {x0, x1}, new int[] {y0, y1}, false, -1, -1);
  }

  private static int hit(int px, int py, Chain... chains) {
    return new WestwardRay(List.of(chains)).hit(px, py, new int[chains.length], 1);
  }

  @Test
  void nothingToTheWest_isNone() {
    assertEquals(-1, hit(0, 5, line(3, 0, 3, 9)));
    assertEquals(-1, hit(9, 5, line(3, 0, 3, 4), line(1, 5, 6, 5)));
  }

  @Test
  void theNearestCounts_fromTheSideOfThePoint() {
    Chain far = line(1, 0, 1, 9);
    Chain up = line(4, 0, 4, 9);
    Chain down = line(4, 9, 4, 0);
    assertEquals(3, hit(8, 5, far, up), "east of an upward line is its right");
    assertEquals(2, hit(8, 5, far, down), "east of a downward line is its left");
  }

  @Test
  void wideLineThatBeginsFarWest_isFoundBehindNearerOnes() {
    Chain wide = line(0, 0, 100, 10);
    Chain narrow = line(30, 0, 30, 10);
    assertEquals(1, hit(90, 6, wide, narrow), "the wide one is at 60 there");
    assertEquals(3, hit(90, 2, wide, narrow), "and here at 20");
  }

  @Test
  void throughAnEnd_looksAHairAboveIt() {
    Chain below = line(3, 0, 3, 5);
    Chain above = line(3, 5, 3, 9);
    assertEquals(3, hit(8, 5, below, above));
  }

  @Test
  void twoThatMeetOnTheRay_theOneThatLeansEastIsNearer() {
    Chain leansWest = line(3, 5, 0, 9);
    Chain leansEast = line(3, 5, 6, 9);
    assertEquals(3, hit(8, 5, leansWest, leansEast));
    assertEquals(1, hit(8, 5, leansEast, leansWest));
  }

  @Test
  void ownPart_isNotLookedAt() {
    List<Chain> chains = List.of(line(4, 0, 4, 9), line(1, 0, 1, 9));
    assertEquals(3, new WestwardRay(chains).hit(8, 5, new int[] {7, 2}, 7));
  }

  @Test
  void lineThroughThePoint_isNotToItsWest() {
    assertEquals(-1, hit(5, 5, line(0, 0, 10, 10)));
    assertEquals(1, hit(6, 5, line(0, 0, 10, 10)));
  }

  /** Their places on the ray differ by less than doubles of that size can say. */
  @Test
  void linesAHairApart_areToldApartExactly() {
    int far = 1 << 20;
    Chain west = line(0, 0, far, far + 1);
    Chain east = line(0, 0, far + 1, far);
    assertEquals(3, hit(far + 9, far - 1, west, east));
    assertEquals(1, hit(far + 9, far - 1, east, west));
  }
}
