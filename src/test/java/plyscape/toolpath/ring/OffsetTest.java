package plyscape.toolpath.ring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import plyscape.grid.Box;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.task.PocketLevel;

/**
 * The path along the walls against closed forms (derived here, from the definition of an offset).
 */
class OffsetTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 50, 40), 0.75);

  private static Geometry circle(double x, double y, double radius) {
    // Sides of 0.2 mm or less: the chord of a 15 mm circle then stands 0.0004 mm off.
    int n = Math.max(60, (int) (Math.PI * 2 * radius / 0.2));
    Coordinate[] points = new Coordinate[n + 1];
    for (int i = 0; i <= n; i++) {
      double a = 2 * Math.PI * (i % n) / n;
      points[i] = new Coordinate(x + radius * Math.cos(a), y + radius * Math.sin(a));
    }
    return FACTORY.createPolygon(points);
  }

  private static Geometry rectangle(double x0, double y0, double x1, double y1) {
    return FACTORY.toGeometry(new org.locationtech.jts.geom.Envelope(x0, x1, y0, y1));
  }

  private static List<Ring> offset(Geometry pocket, double radius) {
    PocketLevel level =
        new PocketLevel(2, 1, RandomPockets.multi(pocket), RandomPockets.multi(pocket));
    LevelField field =
        new LevelField(level, new DistanceField(new PocketEdges(level.pocket()), LATTICE));
    return field.wallRings(new RingTracer(LATTICE), radius, 0);
  }

  private interface Distance {
    double at(double x, double y);
  }

  /** Every point of every ring, and every middle, lies on the offset. */
  private static void lies(List<Ring> rings, Distance error, double toleranceMm) {
    for (Ring ring : rings) {
      for (int i = 0; i < ring.size(); i++) {
        int j = (i + 1) % ring.size();
        assertEquals(0, error.at(ring.x()[i], ring.y()[i]), toleranceMm);
        assertEquals(
            0,
            error.at((ring.x()[i] + ring.x()[j]) / 2, (ring.y()[i] + ring.y()[j]) / 2),
            toleranceMm);
      }
    }
  }

  @Test
  void circle_isCircleOfSmallerRadius() {
    List<Ring> rings = offset(circle(25, 20, 15), 3);
    assertEquals(1, rings.stream().filter(Ring::closed).count());
    lies(rings, (x, y) -> Math.hypot(x - 25, y - 20) - 12, 0.005);
    assertEquals(2 * Math.PI * 12, rings.get(0).lengthMm(), 0.02);
  }

  @Test
  void ring_isOffsetOnBothSides() {
    List<Ring> rings = offset(circle(25, 20, 15).difference(circle(25, 20, 6)), 1.5);
    assertEquals(2, rings.stream().filter(Ring::closed).count());
    lies(
        rings,
        (x, y) -> {
          double r = Math.hypot(x - 25, y - 20);
          return Math.min(Math.abs(r - 13.5), Math.abs(r - 7.5));
        },
        0.005);
  }

  @Test
  void rectangleOutside_hasRoundedCornersOfTheCuttersRadius() {
    List<Ring> rings = offset(rectangle(2, 2, 48, 38).difference(rectangle(20, 15, 30, 25)), 3);
    Ring island =
        rings.stream().min((a, b) -> Double.compare(a.lengthMm(), b.lengthMm())).orElseThrow();
    lies(
        List.of(island),
        (x, y) -> {
          double dx = Math.max(0, Math.max(20 - x, x - 30));
          double dy = Math.max(0, Math.max(15 - y, y - 25));
          return Math.hypot(dx, dy) - 3;
        },
        0.005);
    assertEquals(40 + 2 * Math.PI * 3, island.lengthMm(), 0.02);
  }

  @Test
  void rectangleInside_keepsItsCornersSharp() {
    List<Ring> rings = offset(rectangle(2.013, 2.027, 47.961, 37.943), 3);
    assertEquals(1, rings.stream().filter(Ring::closed).count());
    // Each corner may come nearer to both walls by OffsetCorners.FIT_MM.
    assertEquals(2 * (45.948 - 6 + 35.916 - 6), rings.get(0).lengthMm(), 0.013);
    for (double[] corner :
        new double[][] {{5.013, 5.027}, {44.961, 5.027}, {44.961, 34.943}, {5.013, 34.943}}) {
      double least = 9;
      for (int i = 0; i < rings.get(0).size(); i++) {
        least =
            Math.min(
                least,
                Math.hypot(rings.get(0).x()[i] - corner[0], rings.get(0).y()[i] - corner[1]));
      }
      assertTrue(least < 0.005, "corner " + corner[0] + " " + corner[1] + " off by " + least);
    }
  }

  @Test
  void narrowingWedge_endsWhereTheCutterTouchesBothSides() {
    // Sides through (5, 20) at +-15 degrees: the centre can come to 5 + r / sin 15.
    double half = Math.toRadians(15);
    Coordinate[] points = {
      new Coordinate(5, 20),
      new Coordinate(45, 20 - 40 * Math.tan(half)),
      new Coordinate(45, 20 + 40 * Math.tan(half)),
      new Coordinate(5, 20)
    };
    Geometry wedge = FACTORY.createPolygon(points);
    for (double radius : new double[] {0.75, 1.5, 3}) {
      List<Ring> rings = offset(wedge, radius);
      assertEquals(1, rings.stream().filter(Ring::closed).count());
      double tip = 99;
      for (double x : rings.get(0).x()) {
        tip = Math.min(tip, x);
      }
      assertEquals(5 + radius / Math.sin(half), tip, 0.02);
      Geometry wall = wedge.getBoundary();
      lies(
          rings,
          (x, y) -> {
            Point point = FACTORY.createPoint(new Coordinate(x, y));
            return wall.distance(point) - radius;
          },
          0.01);
    }
  }
}
