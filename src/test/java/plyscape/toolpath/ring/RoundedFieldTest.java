package plyscape.toolpath.ring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.grid.Box;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.task.PocketLevel;

/** Inner rings of a 6 mm cutter in corners, by what follows from the disk alone. */
class RoundedFieldTest {

  private static final double RADIUS = 3;
  private static final double STEP = 2.7;
  private static final LevelField.Spacing SPACING = new LevelField.Spacing(RADIUS, STEP, STEP);
  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 50, 50), 0.75);
  private static final Geometry SQUARE = polygon(5, 5, 45, 5, 45, 45, 5, 45);
  private static final Geometry TRIANGLE = polygon(5, 5, 45, 5, 25, 5 + 20 * Math.sqrt(3));

  private static Geometry polygon(double... xy) {
    Coordinate[] points = new Coordinate[xy.length / 2 + 1];
    for (int i = 0; i < points.length; i++) {
      points[i] = new Coordinate(xy[2 * i % xy.length], xy[(2 * i + 1) % xy.length]);
    }
    return new GeometryFactory().createPolygon(points);
  }

  private static LevelField field(Geometry pocket) {
    PocketLevel level =
        new PocketLevel(2, 1, RandomPockets.multi(pocket), RandomPockets.multi(pocket));
    return new LevelField(level, new DistanceField(new PocketEdges(level.pocket()), LATTICE));
  }

  private static List<Ring> inner(LevelField field) {
    return field.innerRings(new RingTracer(LATTICE), field.rounded(SPACING), SPACING, null);
  }

  @Test
  void straightWalls_ringsLieOneSpacingApart() {
    for (Ring ring : inner(field(SQUARE))) {
      double off = RADIUS + STEP * ring.index() / 2;
      for (int i = 0; i < ring.size(); i++) {
        if (Math.abs(ring.x()[i] - 25) < 0.5 && ring.y()[i] < 25 && off < 10) {
          assertEquals(5 + off, ring.y()[i], 0.01);
        }
      }
    }
  }

  /**
   * A right angle leaves room to be turned at 2.4 mm and more; the narrow average alone turns at
   * 0.9.
   */
  @Test
  void rightAngle_isTurnedWide() {
    for (Ring ring : inner(field(SQUARE))) {
      if (RADIUS + STEP * ring.index() / 2 < 12) {
        assertTrue(tightest(ring) > 2.4, "ring " + ring.index() + ": " + tightest(ring));
      }
    }
  }

  @Test
  void corners_nothingStandsBetweenRings() {
    for (Geometry pocket : List.of(SQUARE, TRIANGLE)) {
      LevelField field = field(pocket);
      List<Ring> rings = new ArrayList<>(inner(field));
      rings.addAll(field.wallRings(new RingTracer(LATTICE), RADIUS, 0));
      for (int k = 0; k < LATTICE.size(); k += 7) {
        if (field.field().distance[k] > RADIUS) {
          double x = LATTICE.x(k % LATTICE.columns());
          double y = LATTICE.y(k / LATTICE.columns());
          assertTrue(distance(rings, x, y) <= RADIUS, "stands at " + x + ", " + y);
        }
      }
    }
  }

  /** As with wall_allowance: 0.01, around a wall that ends in a point. */
  @Test
  void pointThatStandsOut_ringsKeepOffItThoughLittleIsLeftForTheWall() {
    LevelField field = field(polygon(5, 5, 24, 5, 25, 20, 26, 5, 45, 5, 45, 45, 5, 45));
    for (double left : new double[] {0.001, 0.01, 0.03, 0.1}) {
      LevelField.Spacing spacing = new LevelField.Spacing(RADIUS, STEP, left);
      List<Ring> rings =
          field.innerRings(new RingTracer(LATTICE), field.rounded(spacing), spacing, null);
      double off = distance(rings, 25, 20);
      assertTrue(off >= RADIUS, "leaves " + left + " and comes to " + off);
      assertEquals(RADIUS + left, off, 0.06);
    }
  }

  private static double distance(List<Ring> rings, double x, double y) {
    double least = Double.POSITIVE_INFINITY;
    for (Ring ring : rings) {
      int n = ring.size();
      for (int i = 0; i < n; i++) {
        Coordinate a = new Coordinate(ring.x()[i], ring.y()[i]);
        Coordinate b = new Coordinate(ring.x()[(i + 1) % n], ring.y()[(i + 1) % n]);
        least = Math.min(least, Distance.pointToSegment(new Coordinate(x, y), a, b));
      }
    }
    return least;
  }

  /** Radius of the tightest turn, by the angle turned over 2 mm of way. */
  private static double tightest(Ring ring) {
    double least = Double.POSITIVE_INFINITY;
    int n = ring.size();
    for (int i = 0; i < n; i++) {
      double way = 0;
      double turned = 0;
      for (int s = 1; s < n && way < 2; s++) {
        int a = (i + s - 1) % n;
        int b = (i + s) % n;
        int c = (i + s + 1) % n;
        double in = Math.atan2(ring.y()[b] - ring.y()[a], ring.x()[b] - ring.x()[a]);
        double out = Math.atan2(ring.y()[c] - ring.y()[b], ring.x()[c] - ring.x()[b]);
        turned += Math.abs(Math.IEEEremainder(out - in, 2 * Math.PI));
        way += Math.hypot(ring.x()[c] - ring.x()[b], ring.y()[c] - ring.y()[b]);
      }
      least = Math.min(least, turned < 1e-9 ? least : way / turned);
    }
    return least;
  }
}
