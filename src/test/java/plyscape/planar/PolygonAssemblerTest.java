package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class PolygonAssemblerTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Cells of a chequered board of 3 x 3, ten units each, every one a component of its own. */
  private static PlanarMap board() {
    Linework lines = new Linework(9);
    for (int i = 0; i < 9; i++) {
      int x = i % 3 * 10;
      int y = i / 3 * 10;
      lines.add(
          new int[] {x, x + 10, x + 10, x, x}, new int[] {y, y, y + 10, y + 10, y}, i, 1, false);
    }
    return PlanarMap.of(lines);
  }

  private static List<Polygon> polygons(int... cells) {
    PlanarMap map = board();
    IntPredicate in =
        f -> {
          for (int cell : cells) {
            if (map.winding(f, cell) > 0) {
              return true;
            }
          }
          return false;
        };
    PolygonAssembler assembler = new PolygonAssembler(map.chains(), map.faces(), 1, FACTORY);
    List<Polygon> out =
        assembler.polygons(in).stream().map(PolygonAssembler.Part::polygon).toList();
    out.forEach(polygon -> assertTrue(polygon.isValid(), polygon.toString()));
    assertEquals(
        out.stream().mapToInt(p -> 1 + p.getNumInteriorRing()).sum(), assembler.rings(in).size());
    return out;
  }

  @Test
  void none_isNothing() {
    assertEquals(List.of(), polygons());
  }

  @Test
  void oneCell_isItself() {
    assertEquals("POLYGON ((10 10, 20 10, 20 20, 10 20, 10 10))", polygons(4).get(0).toString());
  }

  @Test
  void neighbours_areOne() {
    List<Polygon> out = polygons(0, 1, 4);
    assertEquals(1, out.size());
    assertEquals(300, out.get(0).getArea());
  }

  @Test
  void allButTheMiddle_hasAHole() {
    List<Polygon> out = polygons(0, 1, 2, 3, 5, 6, 7, 8);
    assertEquals(1, out.size());
    assertEquals(1, out.get(0).getNumInteriorRing());
    assertEquals(800, out.get(0).getArea());
  }

  @Test
  void cellsThatTouchInACorner_areTwoPolygons() {
    assertEquals(2, polygons(0, 4).size());
  }

  @Test
  void holesThatTouchInACorner_areTwoRings() {
    List<Polygon> out = polygons(0, 1, 2, 5, 6, 7, 8); // without 3 and 4, which share a side
    assertEquals(1, out.size());
    Polygon corner = polygons(1, 2, 3, 5, 6, 7, 8).get(0); // without 0 and 4: they meet in (10, 10)
    assertEquals(700, corner.getArea());
    assertEquals(1, corner.getNumInteriorRing(), "the middle is a hole, the corner is outside");
  }

  @Test
  void order_isByTheWesternmostPoint() {
    List<Polygon> out = polygons(8, 2, 6);
    assertEquals(
        List.of(0.0, 20.0, 20.0), out.stream().map(p -> p.getCoordinate().getX()).toList());
    assertEquals(0, out.get(1).getCoordinate().getY());
  }

  @Test
  void scale_givesMillimetres() {
    PlanarMap map = board();
    PolygonAssembler assembler =
        new PolygonAssembler(map.chains(), map.faces(), GridUnits.PER_MM, FACTORY);
    double area = assembler.polygons(f -> f > 0).get(0).polygon().getArea();
    assertEquals(900e-6, area, 1e-12);
  }

  @Test
  void ringParts_goByConnectedPart_withTheirHoles() {
    PlanarMap map = board();
    PolygonAssembler assembler = new PolygonAssembler(map.chains(), map.faces(), 1, FACTORY);
    List<PolygonAssembler.RingPart> parts =
        assembler.ringParts(f -> f > 0 && map.winding(f, 4) == 0);
    assertEquals(1, parts.size());
    assertEquals(2, parts.get(0).rings().size());
    long area2 = parts.get(0).rings().stream().mapToLong(PolygonAssembler.Ring::area2).sum();
    assertEquals(2 * 800, area2);
  }

  @Test
  void meanWidth_ofASquare_isItsSideOverTwo_negativeForAHole() {
    int[] up = {0, 8, 8, 0, 0};
    int[] across = {0, 0, 8, 8, 0};
    assertEquals(4, new PolygonAssembler.Ring(up, across).meanWidth());
    assertEquals(-4, new PolygonAssembler.Ring(across, up).meanWidth());
  }
}
