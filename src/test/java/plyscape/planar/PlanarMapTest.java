package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;

class PlanarMapTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static void square(Linework lines, int component, int x0, int y0, int x1, int y1) {
    lines.add(new int[] {x0, x1, x1, x0, x0}, new int[] {y0, y0, y1, y1, y0}, component, 1, false);
  }

  /** Area of the faces by their winding vectors, grid units squared; the outside is left out. */
  private static TreeMap<String, Double> areas(PlanarMap map, int components) {
    PolygonAssembler assembler = new PolygonAssembler(map.chains(), map.faces(), 1, FACTORY);
    TreeMap<String, Double> out = new TreeMap<>();
    for (int f = 1; f < map.faces(); f++) {
      int face = f;
      StringBuilder key = new StringBuilder();
      for (int c = 0; c < components; c++) {
        key.append(c == 0 ? "" : " ").append(map.winding(f, c));
      }
      double area =
          assembler.rings(g -> g == face).stream().mapToDouble(r -> r.area2() / 2.0).sum();
      out.merge(key.toString(), area, Double::sum);
    }
    return out;
  }

  @Test
  void squaresThatOverlap_eachFaceKnowsWhatCoversIt() {
    Linework lines = new Linework(2);
    square(lines, 0, 0, 0, 10, 10);
    square(lines, 1, 6, 6, 16, 16);
    PlanarMap map = PlanarMap.of(lines);
    assertEquals(4, map.faces());
    assertEquals(
        new TreeMap<>(java.util.Map.of("1 0", 84.0, "0 1", 84.0, "1 1", 16.0)), areas(map, 2));
  }

  @Test
  void sameSquareTwice_windsTwice_withoutFurtherFaces() {
    Linework lines = new Linework(1);
    square(lines, 0, 0, 0, 10, 10);
    square(lines, 0, 0, 0, 10, 10);
    PlanarMap map = PlanarMap.of(lines);
    assertEquals(2, map.faces());
    assertEquals(2, map.winding(1, 0));
    assertEquals(0, map.winding(0, 0));
  }

  @Test
  void squaresSideBySide_inOneComponent_haveNoLineBetween() {
    Linework lines = new Linework(1);
    square(lines, 0, 0, 0, 10, 10);
    square(lines, 0, 10, 0, 20, 10);
    PlanarMap map = PlanarMap.of(lines);
    assertEquals(2, map.faces());
    assertEquals(1, map.chains().size());
    assertEquals(new TreeMap<>(java.util.Map.of("1", 200.0)), areas(map, 1));
  }

  @Test
  void figureOfEight_windsBothWays() {
    Linework lines = new Linework(1);
    lines.add(new int[] {0, 10, 10, 0, 0}, new int[] {0, 10, 0, 10, 0}, 0, 1, false);
    PlanarMap map = PlanarMap.of(lines);
    assertEquals(new TreeMap<>(java.util.Map.of("1", 25.0, "-1", 25.0)), areas(map, 1));
  }

  @Test
  void holeThatTouchesItsShell_isAFaceOfItsOwn() {
    Linework lines = new Linework(1);
    square(lines, 0, 0, 0, 10, 10);
    lines.add(new int[] {0, 4, 4, 0}, new int[] {0, 3, 1, 0}, 0, 1, false); // clockwise
    PlanarMap map = PlanarMap.of(lines);
    assertEquals(3, map.faces());
    assertEquals(new TreeMap<>(java.util.Map.of("1", 96.0, "0", 4.0)), areas(map, 1));
  }

  @Test
  void lineThereAndBack_leavesNothing() {
    Linework lines = new Linework(1);
    lines.add(new int[] {0, 10, 0}, new int[] {0, 3, 0}, 0, 1, false);
    PlanarMap map = PlanarMap.of(lines);
    assertEquals(1, map.faces());
    assertEquals(List.of(), map.chains());
  }

  /** Nodes - chains + faces = 1 + connected parts (Euler), and each face's winding by counting. */
  @Test
  void tangledPolygons_fulfilEuler_andWindAsCounted() {
    for (long seed = 0; seed < 25; seed++) {
      Random random = new Random(seed);
      Linework lines = new Linework(1);
      Coordinate[][] polygons = new Coordinate[6][];
      for (int i = 0; i < polygons.length; i++) {
        polygons[i] = polygon(random);
        int n = polygons[i].length;
        int[] x = new int[n];
        int[] y = new int[n];
        for (int k = 0; k < n; k++) {
          x[k] = (int) polygons[i][k].x;
          y[k] = (int) polygons[i][k].y;
        }
        lines.add(x, y, 0, 1, false);
      }
      PlanarMap map = PlanarMap.of(lines);
      euler(map, "seed " + seed);
      PolygonAssembler assembler = new PolygonAssembler(map.chains(), map.faces(), 1, FACTORY);
      for (int f = 1; f < map.faces(); f++) {
        int face = f;
        Point inside = assembler.polygons(g -> g == face).get(0).polygon().getInteriorPoint();
        if (assembler.polygons(g -> g == face).get(0).polygon().getBoundary().distance(inside)
            > 2) {
          int wanted = 0;
          for (Coordinate[] polygon : polygons) {
            wanted += windings(polygon, inside.getCoordinate());
          }
          assertEquals(wanted, map.winding(f, 0), "seed " + seed + " at " + inside);
        }
      }
    }
  }

  private static void euler(PlanarMap map, String message) {
    Set<Long> nodes = new HashSet<>();
    LongIds ids = new LongIds(16);
    for (Chain chain : map.chains()) {
      nodes.add(LongIds.pair(chain.x[0], chain.y[0]));
      nodes.add(LongIds.pair(chain.x[chain.last()], chain.y[chain.last()]));
    }
    nodes.forEach(ids::id);
    Sets sets = new Sets(nodes.size());
    for (Chain chain : map.chains()) {
      sets.join(
          ids.id(LongIds.pair(chain.x[0], chain.y[0])),
          ids.id(LongIds.pair(chain.x[chain.last()], chain.y[chain.last()])));
    }
    Set<Integer> parts = new HashSet<>();
    for (int i = 0; i < nodes.size(); i++) {
      parts.add(sets.find(i));
    }
    assertTrue(map.faces() > 6, message);
    assertEquals(1 + parts.size(), nodes.size() - map.chains().size() + map.faces(), message);
  }

  /** Any closed line of nine points, which may cross itself. */
  private static Coordinate[] polygon(Random random) {
    Coordinate[] out = new Coordinate[10];
    for (int i = 0; i < 9; i++) {
      out[i] = new Coordinate(random.nextInt(1000), random.nextInt(1000));
    }
    out[9] = out[0];
    return out;
  }

  /** How often a closed line goes round a place, by its crossings of a ray to the east. */
  private static int windings(Coordinate[] line, Coordinate p) {
    int count = 0;
    for (int i = 0; i + 1 < line.length; i++) {
      int side = Orientation.index(line[i], line[i + 1], p);
      if (line[i].y <= p.y && line[i + 1].y > p.y && side == Orientation.LEFT) {
        count++;
      } else if (line[i].y > p.y && line[i + 1].y <= p.y && side == Orientation.RIGHT) {
        count--;
      }
    }
    return count;
  }
}
