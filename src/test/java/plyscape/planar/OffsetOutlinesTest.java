package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** What offset outlines wind around, against closed forms and a library's buffers. */
class OffsetOutlinesTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final double SAGITTA = 2;

  private static final int[] SQUARE_X = {0, 10_000, 10_000, 0, 0};
  private static final int[] SQUARE_Y = {0, 0, 10_000, 10_000, 0};

  private static Geometry area(Consumer<OffsetOutlines> offsets) {
    Linework lines = new Linework(1);
    offsets.accept(new OffsetOutlines(lines, 0, SAGITTA));
    PlanarMap map = PlanarMap.of(lines);
    return FACTORY.buildGeometry(
        new PolygonAssembler(map.chains(), map.faces(), 1, FACTORY)
            .polygons(f -> map.winding(f, 0) > 0).stream()
                .map(PolygonAssembler.Part::polygon)
                .toList());
  }

  @Test
  void squareGrown_isASquareWithRoundCorners() {
    double d = 3000;
    double exact = 1e8 + 4 * 1e4 * d + Math.PI * d * d;
    double found = area(o -> o.grown(SQUARE_X, SQUARE_Y, d)).getArea();
    assertTrue(found <= exact && found > exact - SAGITTA * 2 * Math.PI * d, found + " of " + exact);
  }

  @Test
  void squareShrunk_isASquare() {
    assertEquals(4e3 * 4e3, area(o -> o.shrunk(SQUARE_X, SQUARE_Y, 3000)).getArea(), 1e-6);
  }

  @Test
  void squareShrunkByMoreThanItHas_isNothing() {
    assertTrue(area(o -> o.shrunk(SQUARE_X, SQUARE_Y, 5001)).isEmpty());
  }

  /**
   * Two rooms joined by a corridor 1 mm wide, too narrow for a distance of 1: two parts are left,
   * each with a tip before the corridor, between circles around its two corners.
   */
  @Test
  void dumbbellShrunk_fallsApart() {
    int[] x = {0, 8000, 8000, 12_000, 12_000, 20_000, 20_000, 12_000, 12_000, 8000, 8000, 0, 0};
    int[] y = {0, 0, 3500, 3500, 0, 0, 8000, 8000, 4500, 4500, 8000, 8000, 0};
    Geometry left = area(o -> o.shrunk(x, y, 1000));
    assertEquals(2, left.getNumGeometries());
    // Integral of 1000 - sqrt(1000^2 - y^2) from 0 to 500, twice for each of the rooms.
    double tips = 4 * (500e3 - (250 * Math.sqrt(750e3) + 500e3 * Math.PI / 6));
    assertEquals(2 * 6e3 * 6e3 + tips, left.getArea(), SAGITTA * 4 * 1000 * Math.PI / 6);
  }

  /** A hole, clockwise, beside its shell: what is farther than the distance from either. */
  @Test
  void shellAndHoleShrunk_leaveARing() {
    int[] hx = {4000, 4000, 6000, 6000, 4000};
    int[] hy = {4000, 6000, 6000, 4000, 4000};
    Geometry left =
        area(
            o -> {
              o.shrunk(SQUARE_X, SQUARE_Y, 1000);
              o.shrunk(hx, hy, 1000);
            });
    double exact = 8e3 * 8e3 - (2e3 * 2e3 + 4 * 2e3 * 1e3 + Math.PI * 1e6);
    assertEquals(exact, left.getArea(), SAGITTA * 2 * Math.PI * 1000);
  }

  /** Closed form: a quarter of a frame; the inner corner is sharp, the outer one round. */
  @Test
  void rightAngleWidened_roundOutside_sharpInside() {
    double[] x = {0, 10_000, 10_000};
    double[] y = {0, 0, 10_000};
    double d = 1000;
    double exact = 2 * 1e4 * 2 * d - d * d + Math.PI * d * d / 4 + Math.PI * d * d;
    Geometry found = area(o -> o.widened(x, y, d));
    assertEquals(exact, found.getArea(), SAGITTA * 3 * Math.PI * d);
    assertTrue(found.covers(FACTORY.createPoint(new Coordinate(9001, 999))));
  }

  @Test
  void dot_isADisc_andRepeatedPointsDontMatter() {
    double disc = Math.PI * 1e6;
    for (double[] x : List.of(new double[] {500}, new double[] {500, 500, 500})) {
      double found = area(o -> o.widened(x, x.clone(), 1000)).getArea();
      assertEquals(disc, found, SAGITTA * 2 * Math.PI * 1000);
    }
  }

  /** Shrunk and grown again by the library and by us: both at once, on polygons of all kinds. */
  @Test
  void convexPolygons_areWhatTheLibraryGives() {
    for (long seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      Coordinate[] points = new Coordinate[12];
      for (int i = 0; i < points.length; i++) {
        points[i] = new Coordinate(random.nextInt(20_000), random.nextInt(20_000));
      }
      Geometry hull = FACTORY.createMultiPointFromCoords(points).convexHull();
      Coordinate[] ring = hull.reverse().norm().reverse().getCoordinates();
      int[] x = new int[ring.length];
      int[] y = new int[ring.length];
      for (int i = 0; i < ring.length; i++) {
        x[i] = (int) ring[i].x;
        y[i] = (int) ring[i].y;
      }
      double d = 500 + random.nextInt(2000);
      near(buffer(hull, -d), area(o -> o.shrunk(x, y, d)), "shrunk, seed " + seed);
      near(buffer(hull, d), area(o -> o.grown(x, y, d)), "grown, seed " + seed);
    }
  }

  private static Geometry buffer(Geometry geometry, double d) {
    BufferParameters fine = new BufferParameters(200);
    fine.setSimplifyFactor(1e-6);
    return BufferOp.bufferOp(geometry, d, fine);
  }

  private static void near(Geometry wanted, Geometry found, String message) {
    double differs = wanted.symDifference(found).getArea();
    assertTrue(differs <= (SAGITTA + 1) * wanted.getLength(), message + ": " + differs);
  }
}
