package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiLineString;

class OutlineSimplifierTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static void add(OutlineLayer layer, boolean onBox, int... xy) {
    int n = xy.length / 2;
    int[] x = new int[n];
    int[] y = new int[n];
    for (int i = 0; i < n; i++) {
      x[i] = xy[2 * i];
      y[i] = xy[2 * i + 1];
    }
    layer.add(x, y, n, onBox);
  }

  private static int[] simplified(double tolerance, int... xy) {
    OutlineLayer layer = new OutlineLayer();
    add(layer, false, xy);
    return points(OutlineSimplifier.layer(layer, tolerance, false), 0);
  }

  private static int[] points(OutlineLayer layer, int k) {
    OutlineLayer.Outline outline = layer.outlines().get(k);
    int[] out = new int[2 * outline.x().length];
    for (int i = 0; i < outline.x().length; i++) {
      out[2 * i] = outline.x()[i];
      out[2 * i + 1] = outline.y()[i];
    }
    return out;
  }

  @Test
  void pointsOnTheLine_go_evenWithoutTolerance() {
    assertArrayEquals(new int[] {0, 0, 9, 3}, simplified(0, 0, 0, 3, 1, 6, 2, 9, 3));
  }

  @Test
  void pointOffTheLine_goesByTheToleranceOnly() {
    int[] bent = {0, 0, 50, 4, 100, 0};
    assertArrayEquals(bent, simplified(3.9, bent));
    assertArrayEquals(new int[] {0, 0, 100, 0}, simplified(4, bent));
  }

  @Test
  void backAndForth_isMeasuredToTheEndsToo() {
    int[] spike = {0, 0, 100, 0, 60, 0};
    assertArrayEquals(spike, simplified(30, spike), "the tip is 40 from the line's end");
  }

  @Test
  void otherVertexInTheTriangle_keepsTheBend() {
    OutlineLayer layer = new OutlineLayer();
    add(layer, false, 0, 0, 50, 20, 100, 0);
    add(layer, false, 50, 5, 50, -300);
    OutlineLayer out = OutlineSimplifier.layer(layer, 30, false);
    assertEquals(6, points(out, 0).length, "the straight line would cross the other");
  }

  @Test
  void closedLine_keepsAnArea() {
    int[] out = simplified(1000, 0, 0, 10, 0, 20, 5, 20, 20, 5, 20, 0, 10, 0, 0);
    assertEquals(8, out.length, Arrays.toString(out));
  }

  @Test
  void twoLinesBetweenTheSameEnds_dontBecomeOne() {
    OutlineLayer layer = new OutlineLayer();
    add(layer, false, 0, 0, 50, 2, 100, 0);
    add(layer, false, 0, 0, 50, -2, 100, 0);
    OutlineLayer out = OutlineSimplifier.layer(layer, 5, false);
    assertEquals(4 + 6, points(out, 0).length + points(out, 1).length);
  }

  @Test
  void alongTheBox_onlyPointsOnTheLineGo_unlessTheyHaveATolerance() {
    OutlineLayer layer = new OutlineLayer();
    add(layer, true, 0, 0, 40, 0, 50, 1, 100, 0);
    assertEquals(8, points(OutlineSimplifier.layer(layer, 9, false), 0).length);
    assertEquals(4, points(OutlineSimplifier.layer(layer, 9, 1, false), 0).length);
  }

  /** Whatever is left out lies within the tolerance of what stays, and lines still don't cross. */
  @Test
  void wavyLines_stayWithinTolerance_andApart() {
    double tolerance = 12;
    for (long seed = 0; seed < 15; seed++) {
      Random random = new Random(seed);
      OutlineLayer layer = new OutlineLayer();
      LineString[] before = new LineString[8];
      for (int k = 0; k < before.length; k++) {
        int[] xy = new int[200];
        for (int i = 0; i < 100; i++) {
          xy[2 * i] = 10 * i;
          xy[2 * i + 1] = 20 * k + random.nextInt(19); // never into the next one's strip
        }
        add(layer, false, xy);
        before[k] = line(xy);
      }
      OutlineLayer out = OutlineSimplifier.layer(layer, tolerance, false);
      LineString[] after = new LineString[before.length];
      for (int k = 0; k < before.length; k++) {
        after[k] = line(points(out, k));
        for (Coordinate c : before[k].getCoordinates()) {
          assertTrue(after[k].distance(FACTORY.createPoint(c)) <= tolerance + 1e-9, "seed " + seed);
        }
      }
      MultiLineString all = FACTORY.createMultiLineString(after);
      assertTrue(all.isSimple(), "seed " + seed);
      assertTrue(all.getNumPoints() < 500, "seed " + seed + ": " + all.getNumPoints());
    }
  }

  private static LineString line(int[] xy) {
    Coordinate[] out = new Coordinate[xy.length / 2];
    for (int i = 0; i < out.length; i++) {
      out[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
    }
    return FACTORY.createLineString(out);
  }

  @Test
  void restoredAreas_ofARoundHill_areWhatTheyWere() {
    int n = 720;
    int[] xy = new int[2 * n + 2];
    for (int i = 0; i <= n; i++) {
      xy[2 * i] = (int) Math.rint(20_000 * Math.cos(2 * Math.PI * (i % n) / n));
      xy[2 * i + 1] = (int) Math.rint(20_000 * Math.sin(2 * Math.PI * (i % n) / n));
    }
    OutlineLayer layer = new OutlineLayer();
    add(layer, false, xy);
    double exact = Math.PI * 20_000 * 20_000;
    double plain = area(OutlineSimplifier.layer(layer, 60, false));
    double restored = area(OutlineSimplifier.layer(layer, 60, true));
    assertTrue(exact - plain > 20 * Math.abs(exact - restored), plain + " and " + restored);
    assertEquals(exact, restored, 1e-4 * exact);
  }

  private static double area(OutlineLayer layer) {
    Geometry ring = line(points(layer, 0));
    return org.locationtech.jts.algorithm.Area.ofRing(ring.getCoordinates());
  }
}
