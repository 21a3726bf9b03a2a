package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class FaceFinderTest {

  /** A closed chain around a square, counter-clockwise from its lower left corner. */
  private static Chain square(int x0, int y0, int side) {
    int x1 = x0 + side;
    int y1 = y0 + side;
    return new Chain(new int[] {x0, x1, x1, x0, x0}, new int[] {y0, y0, y1, y1, y0}, false, -1, -1);
  }

  private static int assign(Chain... chains) {
    return new FaceFinder(List.of(chains)).assign();
  }

  @Test
  void nothing_isTheOutsideAlone() {
    assertEquals(1, assign());
  }

  @Test
  void square_insideIsLeft_outsideIsNought() {
    Chain a = square(0, 0, 9);
    assertEquals(2, assign(a));
    assertEquals(1, a.left());
    assertEquals(0, a.right());
  }

  @Test
  void squaresApart_shareTheOutside() {
    Chain a = square(0, 0, 9);
    Chain b = square(20, 0, 9);
    assertEquals(3, assign(a, b));
    assertEquals(0, a.right());
    assertEquals(0, b.right());
    assertNotEquals(a.left(), b.left());
  }

  @Test
  void squaresInSquares_eachLiesInTheNext() {
    Chain inner = square(40, 40, 5);
    Chain outer = square(0, 0, 100);
    Chain middle = square(20, 20, 50);
    Chain beside = square(80, 80, 5);
    assertEquals(5, assign(inner, outer, middle, beside));
    assertEquals(0, outer.right());
    assertEquals(outer.left(), middle.right());
    assertEquals(middle.left(), inner.right());
    assertEquals(outer.left(), beside.right());
  }

  @Test
  void triangleThatTouchesASquareFromInside_liesInIt() {
    Chain outer = square(0, 0, 100);
    // They share the corner, so they are one part.
    Chain inner = new Chain(new int[] {0, 30, 25, 0}, new int[] {0, 10, 30, 0}, false, -1, -1);
    assertEquals(3, assign(outer, inner));
    assertEquals(outer.left(), inner.right());
    assertEquals(0, outer.right());
  }

  @Test
  void barAcrossASquare_makesTwoFaces() {
    Chain lower = new Chain(new int[] {0, 0, 9, 9}, new int[] {5, 0, 0, 5}, false, -1, -1);
    Chain upper = new Chain(new int[] {9, 9, 0, 0}, new int[] {5, 9, 9, 5}, false, -1, -1);
    Chain bar = new Chain(new int[] {0, 9}, new int[] {5, 5}, false, -1, -1);
    assertEquals(3, assign(lower, upper, bar));
    assertEquals(upper.left(), bar.left());
    assertEquals(lower.left(), bar.right());
    assertEquals(0, lower.right());
    assertEquals(0, upper.right());
  }
}
