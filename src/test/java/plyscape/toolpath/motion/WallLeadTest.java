package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.PathTrial;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.task.CutTask;
import plyscape.toolpath.task.PathEvents;
import plyscape.toolpath.task.PathOptions;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.RapidRoom;

/**
 * How a plan comes to walls and leaves them, where there is room: by an arc tangent to the path
 * along the wall, so that the cutter never stands still on the finished face.
 */
class WallLeadTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Box CARVED = new Box(2, 2, 62, 52);

  /** A round pocket with a square island in it: room at every wall. */
  private static Geometry pocket() {
    Geometry circle = FACTORY.createPoint(new Coordinate(32, 27)).buffer(20, 90);
    return circle.difference(
        FACTORY.toGeometry(new org.locationtech.jts.geom.Envelope(28, 36, 24, 30)));
  }

  private static List<Move> plan(boolean climb, double allowanceMm) {
    PocketLevel level =
        new PocketLevel(2, 1.2, RandomPockets.multi(pocket()), RandomPockets.multi(pocket()));
    Machine m = PathTrial.MACHINE;
    PathOptions options = new PathOptions(0.5, 5, new RapidRoom(1, 0.1, 0), climb, allowanceMm, 60);
    List<Tool> tools = List.of(PathTrial.tool(3, 1800, 2, 0.45));
    return PathPlanner.plan(
            new CutTask(List.of(level), tools, m, CARVED, options), PathEvents.NONE, new Warnings())
        .get(0)
        .moves();
  }

  private static double offWall(double x, double y) {
    return DistanceOp.distance(pocket().getBoundary(), FACTORY.createPoint(new Coordinate(x, y)));
  }

  /** Heading of a move at its start or its end, radians. */
  private static double heading(double x, double y, Move move, boolean atEnd) {
    if (!move.isArc()) {
      return Math.atan2(move.y() - y, move.x() - x);
    }
    double px = atEnd ? move.x() : x;
    double py = atEnd ? move.y() : y;
    double turn = move.kind() == Move.Kind.CLOCKWISE ? -Math.PI / 2 : Math.PI / 2;
    return Math.atan2(py - move.centreY(), px - move.centreX()) + turn;
  }

  @Test
  void wallsWithRoom_areMetAndLeftTangentially() {
    for (boolean climb : new boolean[] {true, false}) {
      List<Move> moves = plan(climb, 0);
      int met = 0;
      int left = 0;
      for (int i = 2; i + 1 < moves.size(); i++) {
        Move from = moves.get(i - 2);
        Move a = moves.get(i - 1);
        Move b = moves.get(i);
        if (from.depth() != a.depth() || a.depth() != b.depth() || a.depth() < 1) {
          continue;
        }
        boolean fromWall = offWall(from.x(), from.y()) < 1.505;
        boolean atWall = offWall(a.x(), a.y()) < 1.505;
        boolean toWall = offWall(b.x(), b.y()) < 1.505;
        if (!atWall || fromWall == toWall) {
          continue;
        }
        met += toWall ? 1 : 0;
        left += fromWall ? 1 : 0;
        double turn =
            Math.abs(
                Math.IEEEremainder(
                    heading(a.x(), a.y(), b, false) - heading(from.x(), from.y(), a, true),
                    2 * Math.PI));
        assertTrue(turn < Math.toRadians(8), "turns " + Math.toDegrees(turn) + " at " + a);
      }
      assertTrue(met >= 2, met + " walls met");
      assertEquals(met, left);
    }
  }

  @Test
  void wallAllowance_isWhatTheLastRoundLeaves() {
    // The path nearest to the wall, the one along it apart, runs the radius and the allowance off
    // it.
    for (double allowance : new double[] {0.3, 1.0, 1.35}) {
      double least = 99;
      List<Move> moves = plan(true, allowance);
      for (int i = 1; i < moves.size(); i++) {
        Move a = moves.get(i - 1);
        Move b = moves.get(i);
        if (a.depth() == b.depth() && b.depth() > 1) {
          // Both ends, so that ways from one round to the next don't count.
          double one = offWall(a.x(), a.y());
          double other = offWall(b.x(), b.y());
          if (Math.abs(one - other) < 0.01 && one > 1.6) {
            least = Math.min(least, one);
          }
        }
      }
      assertEquals(1.5 + allowance, least, 0.06, "allowance " + allowance);
    }
  }
}
