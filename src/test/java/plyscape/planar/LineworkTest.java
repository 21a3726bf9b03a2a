package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class LineworkTest {

  private static Linework of(String wkt) {
    Linework lines = new Linework(1);
    lines.addMm(geometry(wkt), 0);
    return lines;
  }

  private static Geometry geometry(String wkt) {
    try {
      return new WKTReader().read(wkt);
    } catch (ParseException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** Twice the area to the left of all lines. */
  private static long area2(Linework lines) {
    return lines.lines().stream()
        .mapToLong(line -> new Chain(line.x(), line.y(), false, 0, 0).cross2())
        .sum();
  }

  @Test
  void shellsGoCounterClockwise_holesClockwise_whicheverWayTheyCame() {
    String hole = "(1 1, 1 2, 2 2, 2 1, 1 1)";
    String[] shells = {"(0 0, 4 0, 4 4, 0 4, 0 0)", "(0 0, 0 4, 4 4, 4 0, 0 0)"};
    for (String shell : shells) {
      assertEquals(2 * 15_000_000L, area2(of("POLYGON (" + shell + ", " + hole + ")")), shell);
    }
  }

  @Test
  void severalPolygons_allGoIn() {
    Linework lines = of("MULTIPOLYGON (((0 0, 1 0, 1 1, 0 0)), ((5 5, 6 5, 6 6, 5 5)))");
    assertEquals(2, lines.lines().size());
    assertEquals(2 * 1_000_000L, area2(lines));
  }

  @Test
  void pointsThatFallTogetherOnTheGrid_areOne() {
    Linework lines = of("POLYGON ((0 0, 1 0, 1.0001 0.0001, 1 1, 0 0))");
    assertArrayEquals(new int[] {0, 1000, 1000, 0}, lines.lines().get(0).x());
  }

  @Test
  void ringThatIsNoAreaOnTheGrid_isLeftOut() {
    assertEquals(0, of("POLYGON ((0 0, 0.0001 0, 0.0001 0.0001, 0 0))").lines().size());
    assertEquals(0, of("POLYGON EMPTY").lines().size());
    assertEquals(0, of("GEOMETRYCOLLECTION (LINESTRING (0 0, 1 1))").lines().size());
  }
}
