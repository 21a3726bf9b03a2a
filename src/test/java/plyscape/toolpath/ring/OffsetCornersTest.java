package plyscape.toolpath.ring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DistanceToPoint;
import org.locationtech.jts.algorithm.distance.PointPairDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.grid.Box;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.EdgeBuckets;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.task.PocketLevel;

/**
 * Corners of the way along the walls against closed forms (derived here: lines moved by the radius
 * meet), and against distances measured by JTS.
 */
class OffsetCornersTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final double RADIUS = 0.75;

  /** What places may be short of the radius. */
  private static final double SHORT = OffsetCorners.FIT_MM;

  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 30, 30), RADIUS);

  private static Geometry polygon(double... xy) {
    Coordinate[] points = new Coordinate[xy.length / 2 + 1];
    for (int i = 0; i < points.length; i++) {
      int k = 2 * i % xy.length;
      points[i] = new Coordinate(xy[k], xy[k + 1]);
    }
    return FACTORY.createPolygon(points);
  }

  /**
   * A rhombus about (x, y), as long as it is wide times a factor, whose inscribed circle is given.
   */
  private static Geometry rhombus(double x, double y, double inradius, double factor) {
    double wide = inradius * Math.hypot(1, factor) / factor;
    double longer = wide * factor;
    return polygon(x - longer, y, x, y - wide, x + longer, y, x, y + wide);
  }

  private static LevelField field(Geometry pocket) {
    PocketLevel level =
        new PocketLevel(2, 1, RandomPockets.multi(pocket), RandomPockets.multi(pocket));
    return new LevelField(level, new DistanceField(new PocketEdges(level.pocket()), LATTICE));
  }

  private static List<double[]> corners(Geometry pocket) {
    DistanceField distances = field(pocket).field();
    return new OffsetCorners(distances, new EdgeBuckets(distances.edges, LATTICE, RADIUS), RADIUS)
        .find(distances.range.between(0, 2 * RADIUS));
  }

  private static void has(List<double[]> corners, double x, double y) {
    double least =
        corners.stream().mapToDouble(c -> Math.hypot(c[0] - x, c[1] - y)).min().orElse(99);
    assertTrue(least < 1e-4, "no corner at " + x + " " + y + ", the nearest is off by " + least);
  }

  @Test
  void rectangle_hasFourCornersAtTheRadius() {
    List<double[]> corners = corners(polygon(3.01, 4.02, 20.03, 4.02, 20.03, 9.04, 3.01, 9.04));
    assertEquals(4, corners.size());
    double r = RADIUS - SHORT;
    has(corners, 3.01 + r, 4.02 + r);
    has(corners, 20.03 - r, 9.04 - r);
  }

  @Test
  void narrowingWedge_hasItsTip() {
    double half = Math.toRadians(7);
    Geometry wedge = polygon(3, 15, 28, 15 - 25 * Math.tan(half), 28, 15 + 25 * Math.tan(half));
    List<double[]> corners = corners(wedge);
    assertEquals(3, corners.size());
    has(corners, 3 + (RADIUS - SHORT) / Math.sin(half), 15);
  }

  @Test
  void roomSmallerThanALatticeSquare_isFoundWholeAndReached() {
    // All of the room is a rhombus of a few hundredths of a millimetre, like the pocket.
    for (double room : new double[] {0.0002, 0.004, 0.02, 0.05}) {
      for (double shift : new double[] {0, 0.03, 0.061, 0.09}) {
        double x = 15 + shift;
        double y = 12 + shift / 3;
        Geometry pocket = rhombus(x, y, RADIUS + room, 3);
        List<double[]> corners = corners(pocket);
        assertEquals(4, corners.size(), "room " + room + " shift " + shift);
        double wide = (room + SHORT) * Math.sqrt(10) / 3;
        has(corners, x - 3 * wide, y);
        has(corners, x + 3 * wide, y);
        has(corners, x, y - wide);
        has(corners, x, y + wide);
        List<Ring> rings = field(pocket).wallRings(new RingTracer(LATTICE), RADIUS, 0);
        for (double[] corner : corners) {
          assertTrue(
              rings.stream().anyMatch(ring -> passes(ring, corner, 0.003)),
              "room " + room + " shift " + shift + ": no way to " + Arrays.toString(corner));
        }
      }
    }
  }

  @Test
  void tooTight_hasNone() {
    assertEquals(0, corners(rhombus(15, 12, RADIUS - 0.003, 3)).size());
  }

  @Test
  void slotAsWideAsTheCutter_hasBothEnds() {
    List<double[]> corners = corners(polygon(5, 5.004, 12, 5.004, 12, 6.504, 5, 6.504));
    assertEquals(4, corners.size());
    has(corners, 5 + RADIUS - SHORT, 5.004 + RADIUS - SHORT);
    has(corners, 12 - RADIUS + SHORT, 5.004 + RADIUS + SHORT);
  }

  @Test
  void seededPockets_everyCornerHasAWayAndNoWayIsTooNear() {
    for (long seed = 0; seed < 12; seed++) {
      Box carved = new Box(2, 2, 28, 28);
      for (PocketLevel level : RandomPockets.make(seed, carved, 4, 0.9, 5)) {
        LevelField field =
            new LevelField(level, new DistanceField(new PocketEdges(level.pocket()), LATTICE));
        Geometry walls = level.pocket().getBoundary();
        List<Ring> rings = field.wallRings(new RingTracer(LATTICE), RADIUS, 0);
        for (double[] corner : corners(level.pocket())) {
          assertEquals(RADIUS - SHORT, distance(walls, corner[0], corner[1]), 3e-4);
          // Weak corners may go with the thinning of the rings.
          assertTrue(
              rings.stream().anyMatch(ring -> passes(ring, corner, 0.004)),
              "seed " + seed + ": no way to " + Arrays.toString(corner));
        }
        for (Ring ring : rings) {
          for (int i = 0; i < ring.size(); i++) {
            double d = distance(walls, ring.x()[i], ring.y()[i]);
            assertTrue(
                d > RADIUS - 0.003,
                "seed "
                    + seed
                    + ": "
                    + d
                    + " at "
                    + ring.x()[i]
                    + " "
                    + ring.y()[i]
                    + " "
                    + ring.closed());
          }
        }
      }
    }
  }

  private static double distance(Geometry walls, double x, double y) {
    PointPairDistance pair = new PointPairDistance();
    DistanceToPoint.computeDistance(walls, new Coordinate(x, y), pair);
    return pair.getDistance();
  }

  private static boolean passes(Ring ring, double[] p, double off) {
    int n = ring.size();
    return IntStream.range(ring.closed() ? 0 : 1, n)
        .anyMatch(
            i -> {
              int b = i == 0 ? n - 1 : i - 1;
              return org.locationtech.jts.algorithm.Distance.pointToSegment(
                      new Coordinate(p[0], p[1]),
                      new Coordinate(ring.x()[b], ring.y()[b]),
                      new Coordinate(ring.x()[i], ring.y()[i]))
                  < off;
            });
  }
}
