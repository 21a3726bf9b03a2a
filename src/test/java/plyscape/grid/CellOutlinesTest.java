package plyscape.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

class CellOutlinesTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static LinearRing ring(int[] xy) {
    Coordinate[] out = new Coordinate[xy.length / 2 + 1];
    for (int i = 0; i < out.length; i++) {
      int k = i % (out.length - 1);
      out[i] = new Coordinate(xy[2 * k], xy[2 * k + 1]);
    }
    return FACTORY.createLinearRing(out);
  }

  private static Polygon polygon(CellOutlines.Patch patch) {
    return FACTORY.createPolygon(
        ring(patch.shell()),
        patch.holes().stream().map(CellOutlinesTest::ring).toArray(LinearRing[]::new));
  }

  /**
   * Random cells of all densities: the patches are valid, apart, and cover just the marked cells.
   */
  @Test
  void anyCells_areCoveredByValidPatches() {
    Random random = new Random(7);
    for (int round = 0; round < 300; round++) {
      int columns = 1 + random.nextInt(12);
      int rows = 1 + random.nextInt(12);
      double density = random.nextDouble();
      boolean[] marked = new boolean[columns * rows];
      int count = 0;
      for (int i = 0; i < marked.length; i++) {
        marked[i] = random.nextDouble() < density;
        count += marked[i] ? 1 : 0;
      }
      List<Polygon> patches =
          CellOutlines.of(marked, columns, rows).stream().map(CellOutlinesTest::polygon).toList();
      double area = 0;
      for (Polygon patch : patches) {
        assertTrue(patch.isValid(), () -> patch.toText());
        area += patch.getArea();
      }
      assertEquals(count, area, 0);
      for (int i = 0; i < marked.length; i++) {
        Coordinate centre = new Coordinate(i % columns + 0.5, i / columns + 0.5);
        var point = FACTORY.createPoint(centre);
        assertEquals(marked[i] ? 1 : 0, patches.stream().filter(p -> p.contains(point)).count());
      }
    }
  }
}
