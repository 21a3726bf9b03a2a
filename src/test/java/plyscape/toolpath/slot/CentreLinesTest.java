package plyscape.toolpath.slot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;

/** Middle lines of simple shapes against closed forms (references.md, section 10). */
class CentreLinesTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 60, 60), 0.75);

  static Polygon polygon(double... xy) {
    Coordinate[] points = new Coordinate[xy.length / 2 + 1];
    for (int i = 0; i < points.length; i++) {
      int k = 2 * i % xy.length;
      points[i] = new Coordinate(xy[k], xy[k + 1]);
    }
    return FACTORY.createPolygon(points);
  }

  private static CentreGraph lines(Geometry pocket, double least, double most) {
    DistanceField field = new DistanceField(new PocketEdges(RandomPockets.multi(pocket)), LATTICE);
    return new CentreLines(field, least, most).find();
  }

  private static double length(CentreGraph graph) {
    double sum = 0;
    for (int a = 0; a < graph.size(); a++) {
      for (int b : graph.of(a)) {
        if (a < b) {
          sum +=
              Math.hypot(
                  graph.point(a).x() - graph.point(b).x(), graph.point(a).y() - graph.point(b).y());
        }
      }
    }
    return sum;
  }

  /** Spine from (b/2, b/2) to (a - b/2, b/2). */
  @Test
  void rectangle_spineInTheMiddle() {
    CentreGraph graph = lines(polygon(3, 3, 43, 3, 43, 4.6, 3, 4.6), 0.79, 0.9);
    assertEquals(1, graph.chains().size());
    for (int a = 0; a < graph.size(); a++) {
      assertEquals(3.8, graph.point(a).y(), 1e-3);
      assertEquals(0.8, graph.point(a).clearMm(), 1e-3);
    }
    assertEquals(40 - 1.6, length(graph), 2.1 * LATTICE.stepMm());
  }

  /** One closed circle of radius (R1 + R2) / 2, r = (R2 - R1) / 2. */
  @Test
  void annulus_oneClosedCircle() {
    Geometry ring =
        FACTORY
            .createPoint(new Coordinate(30, 30))
            .buffer(10.8, 90)
            .difference(FACTORY.createPoint(new Coordinate(30, 30)).buffer(9.2, 90));
    CentreGraph graph = lines(ring, 0.75, 0.9);
    List<int[]> chains = graph.chains();
    assertEquals(1, chains.size());
    assertEquals(chains.get(0)[0], chains.get(0)[chains.get(0).length - 1]);
    for (int a = 0; a < graph.size(); a++) {
      assertEquals(10, Math.hypot(graph.point(a).x() - 30, graph.point(a).y() - 30), 2e-3);
      assertEquals(0.8, graph.point(a).clearMm(), 2e-3);
    }
    assertEquals(2 * Math.PI * 10, length(graph), 0.03);
  }

  /** Junction 3w/8 above the stem's mouth, r = 5w/8; each parabola arc 0.520114 w. */
  @Test
  void tee_junctionAtFiveEighths() {
    double w = 1.6;
    double x = 20.03;
    double y = 30.02;
    CentreGraph graph =
        lines(
            polygon(
                x - 15, y, x - w / 2, y, x - w / 2, y - 12, x + w / 2, y - 12, x + w / 2, y, x + 15,
                y, x + 15, y + w, x - 15, y + w),
            0.79,
            2);
    int junction = junction(graph, 3);
    assertEquals(x, graph.point(junction).x(), 1e-3);
    assertEquals(y + 3 * w / 8, graph.point(junction).y(), 1e-3);
    assertEquals(5 * w / 8, graph.point(junction).clearMm(), 1e-3);
    // Arms from the junction: arc and straight to half a width from the end.
    double arms = 2 * (0.520114 * w + 15 - w / 2 - w / 2) + 12 + 3 * w / 8 - w / 2;
    assertEquals(arms, length(graph), 4 * LATTICE.stepMm());
  }

  /** Centre, r = w / sqrt 2. */
  @Test
  void cross_junctionInTheCentre() {
    double w = 1.6;
    double x = 20.03;
    double y = 30.02;
    Geometry cross =
        polygon(x - 15, y - w / 2, x + 15, y - w / 2, x + 15, y + w / 2, x - 15, y + w / 2)
            .union(
                polygon(
                    x - w / 2, y - 15, x + w / 2, y - 15, x + w / 2, y + 15, x - w / 2, y + 15));
    CentreGraph graph = lines(cross, 0.79, 2);
    int junction = junction(graph, 4);
    assertEquals(x, graph.point(junction).x(), 1e-3);
    assertEquals(y, graph.point(junction).y(), 1e-3);
    assertEquals(w / Math.sqrt(2), graph.point(junction).clearMm(), 1e-3);
  }

  /** The only place at which so many lines meet. */
  private static int junction(CentreGraph graph, int lines) {
    int found = -1;
    for (int a = 0; a < graph.size(); a++) {
      if (graph.of(a).length > 2) {
        assertEquals(-1, found, "one junction");
        assertEquals(lines, graph.of(a).length);
        found = a;
      }
    }
    assertTrue(found >= 0, "no junction");
    return found;
  }
}
