package plyscape.toolpath.slot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;
import plyscape.grid.Box;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;

/** Narrow places of simple shapes; distances from the walls are measured by JTS. */
class SlotFinderTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final double RADIUS = 0.75;
  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 60, 60), RADIUS);

  private static Geometry bar(double x, double y, double length, double width, double degrees) {
    double cos = Math.cos(Math.toRadians(degrees));
    double sin = Math.sin(Math.toRadians(degrees));
    double[][] corners = {{0, 0}, {length, 0}, {length, width}, {0, width}, {0, 0}};
    Coordinate[] points = new Coordinate[5];
    for (int k = 0; k < 5; k++) {
      double u = corners[k][0] - length / 2;
      double v = corners[k][1] - width / 2;
      points[k] = new Coordinate(x + u * cos - v * sin, y + u * sin + v * cos);
    }
    return FACTORY.createPolygon(points);
  }

  private static List<SlotWay> slots(Geometry pocket) {
    DistanceField field = new DistanceField(new PocketEdges(RandomPockets.multi(pocket)), LATTICE);
    return new SlotFinder(field, RADIUS, false).find();
  }

  /** The sides of all slots lie off the walls by the radius, within what a chord takes. */
  private static void assertAtWalls(Geometry pocket, List<SlotWay> slots) {
    for (SlotWay slot : slots) {
      for (int i = 0; i < slot.size(); i++) {
        assertFits(pocket, slot.x()[i], slot.y()[i]);
        assertFits(pocket, slot.leftX()[i], slot.leftY()[i]);
        assertFits(pocket, slot.rightX()[i], slot.rightY()[i]);
        if (i > 0) {
          assertFits(
              pocket,
              (slot.leftX()[i] + slot.leftX()[i - 1]) / 2,
              (slot.leftY()[i] + slot.leftY()[i - 1]) / 2);
          assertFits(
              pocket,
              (slot.rightX()[i] + slot.rightX()[i - 1]) / 2,
              (slot.rightY()[i] + slot.rightY()[i - 1]) / 2);
        }
      }
    }
  }

  private static void assertFits(Geometry pocket, double x, double y) {
    Geometry point = FACTORY.createPoint(new Coordinate(x, y));
    double d = DistanceOp.distance(pocket.getBoundary(), point);
    assertTrue(d > RADIUS - 0.006, "at " + x + ", " + y + " only " + d);
  }

  @Test
  void street_oneWayFromEndToEnd() {
    for (double width : new double[] {1.5, 1.51, 1.55, 1.6}) {
      Geometry pocket = bar(30.01, 30.02, 40, width, 17);
      List<SlotWay> slots = slots(pocket);
      assertEquals(1, slots.size(), "width " + width);
      // The centre goes to a radius from each end.
      assertEquals(40 - 2 * RADIUS, slots.get(0).lengthMm(), 0.05);
      assertEquals(width - 2 * RADIUS, slots.get(0).roomMm(100), 0.003);
      assertAtWalls(pocket, slots);
    }
  }

  @Test
  void crossingAtAnAngle_twoWaysStraightOn() {
    Geometry pocket =
        bar(30, 30, 50, 1.58, 10).union(bar(31, 31, 40, 1.58, 70)).union(bar(20, 22, 20, 1.58, 70));
    List<SlotWay> slots = slots(pocket);
    assertEquals(3, slots.size());
    assertAtWalls(pocket, slots);
    // At a crossing the middle swerves to its centre.
    assertEquals(48.5, slots.stream().mapToDouble(SlotWay::lengthMm).max().orElse(0), 0.6);
  }

  /** r = w / sqrt 2 in the centre of a cross: access that no way leads to (references.md, 10). */
  @Test
  void cutterWiderThanTheArms_hasNoWayIn() {
    Geometry pocket = bar(30, 30, 40, 1.48, 0).union(bar(30, 30, 40, 1.48, 90));
    assertEquals(List.of(), slots(pocket));
  }

  @Test
  void roundTheBlock_oneClosedWay() {
    Geometry block = bar(30, 30, 12, 10, 20);
    Geometry pocket = block.buffer(1.6, 16).difference(block);
    List<SlotWay> slots = slots(pocket);
    assertEquals(1, slots.size());
    SlotWay slot = slots.get(0);
    assertEquals(slot.x()[0], slot.x()[slot.size() - 1], 1e-9);
    assertEquals(2 * 22 + 2 * Math.PI * 0.8, slot.lengthMm(), 0.05);
    assertAtWalls(pocket, slots);
  }

  @Test
  void wideRoom_isLeftToRings() {
    assertEquals(List.of(), slots(bar(30, 30, 30, 4, 0)));
  }

  private static Geometry polygon(double... xy) {
    Coordinate[] points = new Coordinate[xy.length / 2 + 1];
    for (int k = 0; k < points.length; k++) {
      int at = 2 * (k % (xy.length / 2));
      points[k] = new Coordinate(xy[at], xy[at + 1]);
    }
    return FACTORY.createPolygon(points);
  }

  /** What the cutter covers on its way along the sides of all slots. */
  private static Geometry cut(List<SlotWay> slots) {
    Geometry cut = FACTORY.createPolygon();
    for (SlotWay slot : slots) {
      int n = slot.size();
      Coordinate[] round = new Coordinate[2 * n + 1];
      for (int i = 0; i < n; i++) {
        round[i] = new Coordinate(slot.leftX()[i], slot.leftY()[i]);
        round[2 * n - 1 - i] = new Coordinate(slot.rightX()[i], slot.rightY()[i]);
      }
      round[2 * n] = round[0];
      cut = cut.union(FACTORY.createLineString(round).buffer(RADIUS, 32));
    }
    return cut;
  }

  /** The opening by the cutter's disk, by JTS, is cut but for a skin of 0.03 mm. */
  @Test
  void cornersOfNarrowPlaces_areReached() {
    Geometry wedge = polygon(10, 20, 40, 21, 40, 22.53, 10, 21.62);
    Geometry hook = polygon(10, 10, 31.6, 10, 32, 30, 30.4, 30, 30.1, 11.6, 10, 11.52);
    for (Geometry pocket : List.of(wedge, hook, bar(30.01, 30.02, 40, 1.6, 33))) {
      List<SlotWay> slots = slots(pocket);
      assertEquals(1, slots.size());
      assertAtWalls(pocket, slots);
      Geometry reached = pocket.buffer(-RADIUS + 1e-4, 32).buffer(RADIUS, 32);
      Geometry left = reached.buffer(-0.03, 32).difference(cut(slots));
      assertEquals(0, left.getArea(), 0.002, left::toText);
    }
  }
}
