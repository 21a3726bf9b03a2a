package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Move;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.PathTrial;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.task.PocketLevel;

/** Wall rings begin on a stretch along the ply's grain. */
class GrainStartTest {

  private static final Box CARVED = new Box(0, 0, 60, 60);
  private static final double SIDE_MM = 24;
  private static final double RADIUS_MM = 1.5;

  /** The way along the walls of a square pocket with its corner at a place: where it begins. */
  private static List<double[]> starts(double cornerX, double cornerY, double grain) {
    MultiPolygon square =
        RandomPockets.multi(
            new GeometryFactory()
                .toGeometry(new Envelope(cornerX, cornerX + SIDE_MM, cornerY, cornerY + SIDE_MM)));
    PocketLevel level = new PocketLevel(2, 1.2, square, square, grain);
    List<Move> moves =
        PathPlanner.plan(
                List.of(level),
                List.of(PathTrial.tool(2 * RADIUS_MM, 1800, 2, 0.45)),
                PathTrial.MACHINE,
                CARVED,
                new Warnings())
            .get(0)
            .moves();
    List<double[]> starts = new ArrayList<>();
    for (int i = 1; i < moves.size(); i++) {
      Move at = moves.get(i - 1);
      Move next = moves.get(i);
      boolean onWall = next.depth() > 1 && at.depth() > 1 && offWall(at, cornerX, cornerY) < 0.01;
      if (onWall && offWall(next, cornerX, cornerY) < 0.01) {
        if (i < 2 || offWall(moves.get(i - 2), cornerX, cornerY) > 0.01) {
          starts.add(new double[] {at.x(), at.y()});
        }
      }
    }
    return starts;
  }

  /** How far a place is from the square that the cutter's centre follows, mm. */
  private static double offWall(Move at, double cornerX, double cornerY) {
    double dx = Math.min(at.x() - cornerX, cornerX + SIDE_MM - at.x()) - RADIUS_MM;
    double dy = Math.min(at.y() - cornerY, cornerY + SIDE_MM - at.y()) - RADIUS_MM;
    return Math.abs(Math.min(dx, dy));
  }

  @Test
  void squarePocket_wallBeginsOnASideAlongTheGrain() {
    for (double[] corner : new double[][] {{3, 3}, {30, 8}, {12, 33}}) {
      for (double grain : new double[] {0, 90}) {
        List<double[]> starts = starts(corner[0], corner[1], grain);
        assertEquals(1, starts.size(), "one ring along the wall");
        double x = starts.get(0)[0] - corner[0];
        double y = starts.get(0)[1] - corner[1];
        double fromEnds = grain == 0 ? Math.min(x, SIDE_MM - x) : Math.min(y, SIDE_MM - y);
        double offSide = grain == 0 ? Math.min(y, SIDE_MM - y) : Math.min(x, SIDE_MM - x);
        assertEquals(RADIUS_MM, offSide, 0.005, "grain " + grain + " at " + x + " " + y);
        assertTrue(fromEnds > RADIUS_MM + 0.5, "not in a corner, grain " + grain);
      }
    }
  }

  /** A rectangle 20 x 10 with its corner at the origin, counterclockwise. */
  private static final Piece RECTANGLE =
      new Piece(0, true, new double[] {0, 20, 20, 0}, new double[] {0, 0, 10, 10});

  @Test
  void place_isTheNearestAlongTheGrain_awayFromCorners() {
    Piece along = new GrainStart(0, 2).place(RECTANGLE, 19, 4);
    assertEquals(18, along.x()[0], 1e-9);
    assertEquals(0, along.y()[0], 1e-9);
    Piece across = new GrainStart(90, 2).place(RECTANGLE, 19, 4);
    assertEquals(20, across.x()[0], 1e-9);
    assertEquals(4, across.y()[0], 1e-9);
    assertEquals(60, across.lengthMm(), 1e-9);
  }

  @Test
  void place_isTheNearestPoint_whereTheGrainIsFar() {
    Piece far = new Piece(0, true, new double[] {0, 2, 2, 0}, new double[] {0, 0, 60, 60});
    Piece placed = new GrainStart(0, 0.5).place(far, 3, 30);
    // Both ends are 30 mm away and hold both the nearest point and the only stretches along X.
    assertTrue(placed.y()[0] == 0 || placed.y()[0] == 60);
    Piece slanted = new GrainStart(45, 0.5).place(far, 3, 55);
    assertEquals(2, slanted.x()[0], 1e-9);
    assertEquals(60, slanted.y()[0], 1e-9);
  }
}
