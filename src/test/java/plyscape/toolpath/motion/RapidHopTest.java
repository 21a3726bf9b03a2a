package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.RapidTime;
import plyscape.toolpath.task.RapidRoom;

/** Rapids over what stands between two places: never through it, never slower than square ones. */
class RapidHopTest {

  private static final Machine MACHINE = Machine.USUAL;
  private static final RapidRoom ROOM = RapidRoom.of(MACHINE);

  private final RapidHop hop = new RapidHop(MACHINE, ROOM);
  private final RapidTime rapids = new RapidTime(MACHINE);

  /** Steps of wood along X, each 2 mm long; the depth of each one's top. */
  private static RapidHop.Wood steps(double... tops) {
    return (ax, ay, bx, by) -> {
      double highest = Double.POSITIVE_INFINITY;
      for (int i = 0; i < tops.length; i++) {
        if (Math.min(ax, bx) <= 2 * i + 2 && Math.max(ax, bx) >= 2 * i) {
          highest = Math.min(highest, tops[i]);
        }
      }
      return highest;
    };
  }

  private List<Move> moves(double[] from, double[] to, RapidHop.Wood wood) {
    return hop.moves(from, to, to[2], wood);
  }

  private static double seconds(double[] from, List<Move> moves) {
    return new MotionModel(MACHINE).times(from[0], from[1], from[2], moves).totalS();
  }

  @Test
  void overAFloorItGoesUpAslantInOneLeg() {
    double[] from = {0, 0, 3};
    List<Move> moves = moves(from, new double[] {9, 0, 2.8}, steps(3, 3, 3, 3, 3));
    assertTrue(moves.size() <= 2, moves.toString());
    assertEquals(rapids.seconds(9), seconds(from, moves), 0.1);
  }

  @Test
  void betweenWallsItGoesStraightUpAndDown() {
    double[] from = {0.1, 0, 3};
    List<Move> moves = moves(from, new double[] {7.9, 0, 2.8}, steps(0, 0, 0, 0));
    double square = 2 * rapids.seconds(4) + rapids.seconds(7.8);
    assertEquals(3, moves.size(), moves.toString());
    assertEquals(-ROOM.faceMm(), moves.get(1).depth());
    assertEquals(square, seconds(from, moves), 0.06);
  }

  @Test
  void noHopGoesThroughWoodOrTakesLongerThanASquareOne() {
    Random random = new Random(3);
    for (int trial = 0; trial < 300; trial++) {
      double[] tops = random.doubles(10, 0, 4).map(d -> d < 1 ? 0 : d).toArray();
      tops[0] = 4;
      tops[9] = Math.max(tops[9], 3);
      RapidHop.Wood wood = steps(tops);
      double[] from = {0.2 + random.nextDouble(), 0, 4};
      double[] to = {18.5 + random.nextDouble(), 0, tops[9] - ROOM.floorMm()};
      List<Move> moves = moves(from, to, wood);
      double top = Double.POSITIVE_INFINITY;
      double x = from[0];
      double depth = from[2];
      for (Move move : moves) {
        for (int k = 0; k <= 100; k++) {
          double at = x + k / 100.0 * (move.x() - x);
          double z = depth + k / 100.0 * (move.depth() - depth);
          double stands = wood.highest(at, 0, at, 0);
          double free = stands == 0 ? ROOM.faceMm() : stands < 4 ? ROOM.floorMm() : 0;
          assertTrue(z <= stands - free + 1e-9, trial + " at " + at);
        }
        top = Math.min(top, move.depth());
        x = move.x();
        depth = move.depth();
      }
      assertEquals(to[0], x);
      double square =
          rapids.seconds(4 - top) + rapids.seconds(to[0] - from[0]) + rapids.seconds(to[2] - top);
      assertTrue(seconds(from, moves) <= square + 0.05, trial + ": " + moves);
    }
  }
}
