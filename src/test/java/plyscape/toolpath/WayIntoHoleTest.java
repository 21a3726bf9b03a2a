package plyscape.toolpath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.task.PocketLevel;

/** How a cutter of 3 mm goes down into a round hole in uncut wood. */
class WayIntoHoleTest {

  private static final Machine MACHINE = Workshop.ROUTER;
  private static final double DEPTH_MM = 1.5;

  /**
   * How it goes down at its feeds from the face.
   *
   * @param straightMm straight down
   * @param slopedMm down on ramps
   * @param rampMm length of those, seen from above
   */
  private record Way(double straightMm, double slopedMm, double rampMm) {}

  private static Way into(double holeMm) {
    MultiPolygon hole = round(holeMm);
    Tool tool = PathTrial.tool(3, 1800, 2, 0.45);
    List<Move> moves =
        PathPlanner.plan(
                List.of(new PocketLevel(2, DEPTH_MM, hole, hole)),
                List.of(tool),
                MACHINE,
                new Box(0, 0, 30, 30),
                new Warnings())
            .get(0)
            .moves();
    double straight = 0;
    double sloped = 0;
    double ramp = 0;
    Move from = moves.get(0);
    for (Move move : moves) {
      double down = move.depth() - Math.max(0, from.depth());
      double aside = Math.hypot(move.x() - from.x(), move.y() - from.y());
      if (move.kind() != Move.Kind.RAPID && down > 0) {
        straight += aside < 1e-6 ? down : 0;
        sloped += aside < 1e-6 ? 0 : down;
        ramp += aside;
      }
      from = move;
    }
    return new Way(straight, sloped, ramp);
  }

  private static MultiPolygon round(double diameter) {
    GeometryFactory factory = new GeometryFactory();
    Coordinate[] ring = new Coordinate[361];
    for (int i = 0; i < 360; i++) {
      double a = Math.toRadians(i);
      ring[i] = new Coordinate(15 + diameter / 2 * Math.cos(a), 15 + diameter / 2 * Math.sin(a));
    }
    ring[360] = ring[0].copy();
    return factory.createMultiPolygon(new Polygon[] {factory.createPolygon(ring)});
  }

  @Test
  void holeAQuarterWiderThanTheCutter_straightDown() {
    Way way = into(3.8);
    assertEquals(DEPTH_MM, way.straightMm(), 1e-9);
    assertEquals(0, way.slopedMm(), 1e-9);
  }

  /** Length of a ramp: depth over the tangent of its angle (plane trigonometry). */
  @Test
  void wideHole_rampNoSteeperThanAsked() {
    Way way = into(9);
    assertEquals(0, way.straightMm(), 1e-9);
    assertEquals(DEPTH_MM, way.slopedMm(), 1e-9);
    double least = DEPTH_MM / Math.tan(Math.toRadians(MACHINE.rampDegrees()));
    assertTrue(way.rampMm() >= least - 0.01, way + " at least " + least);
  }
}
