package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import plyscape.grid.Box;

/** Unions held against closed forms and against JTS's buffers and unions. */
class AreaUnionTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Box BOX = new Box(0, 0, 40, 30);

  private static Geometry boxArea() {
    return FACTORY.toGeometry(new Envelope(0, 40, 0, 30));
  }

  private static Coordinate[] line(double... xy) {
    Coordinate[] out = new Coordinate[xy.length / 2];
    for (int i = 0; i < out.length; i++) {
      out[i] = new Coordinate(xy[2 * i], xy[2 * i + 1]);
    }
    return out;
  }

  /** Closed forms: a stadium and a disc; chords lie inside by 0.004 mm at most. */
  @Test
  void straightLineAndDot_areStadiumAndDisc() {
    AreaUnion union = new AreaUnion(BOX);
    union.add(line(10, 10, 20, 10), 4);
    union.add(line(33, 20, 33, 20), 6);
    double exact = 10 * 4 + Math.PI * 4 + Math.PI * 9;
    assertEquals(exact, union.union(FACTORY).getArea(), 0.004 * 2 * Math.PI * 5);
  }

  /** A line back over itself, and one that closes on itself, are no different from their places. */
  @Test
  void lineThereAndBack_andRing_fillOnce() {
    AreaUnion union = new AreaUnion(BOX);
    union.add(line(10, 5, 20, 5, 10, 5), 2);
    union.add(line(10, 10, 30, 10, 30, 25, 10, 25, 10, 10), 2);
    MultiPolygon area = union.union(FACTORY);
    double frame = 2 * (20 + 15) * 2 - 4 + Math.PI;
    assertEquals(20 + Math.PI + frame, area.getArea(), 0.05);
    assertEquals(2, area.getNumGeometries());
  }

  @Test
  void nothing_isEmpty_andOutside_isEmpty() {
    assertTrue(new AreaUnion(BOX).union(FACTORY).isEmpty());
    AreaUnion union = new AreaUnion(BOX);
    union.add(line(-10, -10, -20, -10), 4);
    assertTrue(union.union(FACTORY).isEmpty());
  }

  @Test
  void tangledLinesAndPolygons_areWhatJtsGives() {
    for (long seed = 0; seed < 25; seed++) {
      Random random = new Random(seed);
      AreaUnion union = new AreaUnion(BOX);
      List<Geometry> parts = new ArrayList<>();
      for (int i = 0; i < 12; i++) {
        double width = 0.2 + 2 * random.nextDouble();
        // Short steps against the width, so that offsets cross themselves.
        Coordinate[] line = walk(random, 2 + random.nextInt(25), 0.3 + 2 * random.nextDouble());
        union.add(line, width);
        parts.add(BufferOp.bufferOp(FACTORY.createLineString(line), width / 2, exact()));
        Geometry blob =
            FACTORY.createLineString(walk(random, 6, 2)).convexHull().buffer(0.5).getBoundary();
        Geometry polygon = blob.buffer(0.7);
        union.add(polygon);
        parts.add(polygon);
      }
      MultiPolygon area = union.union(FACTORY);
      assertTrue(area.isValid(), "seed " + seed);
      Geometry exact = UnaryUnionOp.union(parts).intersection(boxArea());
      Geometry differs = area.symDifference(exact);
      // Chords inside by 0.004 mm and the grid's 0.0007 along the whole outline are the most.
      assertTrue(differs.getArea() < 0.0047 * exact.getLength(), "seed " + seed);
      assertTrue(differs.buffer(-0.004).isEmpty(), "seed " + seed + " differs by more than chords");
    }
  }

  /** JTS leaves out bends of a hundredth of the width unless told otherwise. */
  private static BufferParameters exact() {
    BufferParameters exact = new BufferParameters(48);
    exact.setSimplifyFactor(1e-5);
    return exact;
  }

  private static Coordinate[] walk(Random random, int points, double step) {
    Coordinate[] out = new Coordinate[points];
    double x = 40 * random.nextDouble();
    double y = 30 * random.nextDouble();
    double turn = 7 * random.nextDouble();
    for (int i = 0; i < points; i++) {
      out[i] = new Coordinate(x, y);
      turn += random.nextGaussian();
      x += step * Math.cos(turn);
      y += step * Math.sin(turn);
    }
    return out;
  }
}
