package plyscape.standing;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import plyscape.grid.Box;

/** Openings against distances taken point by point, and against inscribed circles (JTS). */
class WoodOpeningTest {

  private static final double WIDTH = 0.8;
  private static final double STEP = 0.1;
  private static final int SIDE = 240;
  private static final GeometryFactory MM = new GeometryFactory(new PrecisionModel(1000));

  @Test
  void vanished_onRandomPockets_isWhereNoDiskFits() {
    for (int seed = 0; seed < 6; seed++) {
      MultiPolygon pocket = pocket(new Random(seed));
      Geometry panel = MM.toGeometry(new Envelope(0, 24, 0, 24));
      Geometry wood = panel.difference(pocket);
      List<Polygon> parts =
          WoodOpening.of(WoodOpening.wood(new Box(0, 0, 24, 24), pocket), WIDTH).vanished();
      for (Polygon part : parts) {
        double room = new MaximumInscribedCircle(part, 0.001).getRadiusLine().getLength();
        assertTrue(room < WIDTH / 2 + 0.006, "seed " + seed + ": a disk fits into " + part);
      }
      compare("seed " + seed, wood, MM.createMultiPolygon(parts.toArray(Polygon[]::new)));
    }
  }

  private static void compare(String where, Geometry wood, MultiPolygon gone) {
    IndexedPointInAreaLocator in = new IndexedPointInAreaLocator(wood);
    IndexedPointInAreaLocator lost = new IndexedPointInAreaLocator(gone);
    IndexedFacetDistance edge = new IndexedFacetDistance(wood.getBoundary());
    double[] room = new double[SIDE * SIDE];
    for (int k = 0; k < room.length; k++) {
      Coordinate place = place(k);
      room[k] = in.locate(place) == Location.INTERIOR ? edge.distance(MM.createPoint(place)) : -1;
    }
    boolean[] stays = near(room, WIDTH / 2, WIDTH / 2);
    boolean[] mayStay = near(room, WIDTH / 2 - STEP, WIDTH / 2 + STEP);
    double[] kept = new double[room.length];
    for (int k = 0; k < kept.length; k++) {
      kept[k] = mayStay[k] ? 1 : -1;
    }
    boolean[] byCorner = near(kept, 0, WIDTH + 0.2);
    for (int k = 0; k < room.length; k++) {
      int location = lost.locate(place(k));
      // The opening keeps a hundredth more than the disk reaches.
      assertFalse(stays[k] && location == Location.INTERIOR && room[k] > 0.02, where + place(k));
      if (room[k] > 0 && !mayStay[k] && !byCorner[k]) {
        assertTrue(location != Location.EXTERIOR, where + ": kept at " + place(k));
      }
    }
  }

  /** Which points are within a distance of one with so much room. */
  private static boolean[] near(double[] room, double least, double distance) {
    boolean[] out = new boolean[room.length];
    int reach = (int) Math.ceil(distance / STEP);
    for (int k = 0; k < room.length; k++) {
      if (room[k] < least) {
        continue;
      }
      for (int b = -reach; b <= reach; b++) {
        for (int a = -reach; a <= reach; a++) {
          int x = k % SIDE + a;
          int y = k / SIDE + b;
          if (x >= 0 && y >= 0 && x < SIDE && y < SIDE && Math.hypot(a, b) * STEP <= distance) {
            out[y * SIDE + x] = true;
          }
        }
      }
    }
    return out;
  }

  private static Coordinate place(int k) {
    return new Coordinate((k % SIDE + 0.5) * STEP, (k / SIDE + 0.5) * STEP);
  }

  private static MultiPolygon pocket(Random random) {
    Geometry pocket = MM.createPolygon();
    for (int k = 0; k < 18; k++) {
      Coordinate[] line = new Coordinate[3];
      for (int i = 0; i < line.length; i++) {
        line[i] = new Coordinate(2 + 20 * random.nextDouble(), 2 + 20 * random.nextDouble());
      }
      pocket = pocket.union(MM.createLineString(line).buffer(0.8));
    }
    List<Polygon> parts = new ArrayList<>();
    for (int i = 0; i < pocket.getNumGeometries(); i++) {
      parts.add((Polygon) pocket.getGeometryN(i));
    }
    return MM.createMultiPolygon(parts.toArray(Polygon[]::new));
  }
}
