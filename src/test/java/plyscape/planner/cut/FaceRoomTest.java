package plyscape.planner.cut;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;

class FaceRoomTest {

  private static final Tool TOOL = Workshop.END_MILL_3;

  private static List<Move> of(Move... moves) {
    return new FaceRoom(0.5, TOOL).of(new double[] {0, 0, -4}, List.of(moves));
  }

  @Test
  void wayDown_isSlowFromTheFlatnessOn() {
    assertEquals(
        List.of(
            Move.rapid(5, 5, -4),
            Move.rapid(5, 5, -0.55),
            Move.line(5, 5, -0.2, TOOL.plungeMmPerMin())),
        of(Move.rapid(5, 5, -4), Move.rapid(5, 5, -0.2)));
  }

  @Test
  void lowHop_isCutByFeed() {
    List<Move> moves = of(Move.rapid(0, 0, -0.3), Move.rapid(9, 0, -0.3), Move.rapid(9, 0, -4));
    assertEquals(Move.line(9, 0, -0.3, TOOL.feedMmPerMin()), moves.get(2));
    assertEquals(Move.rapid(9, 0, -4), moves.get(3), "straight up is free");
  }

  @Test
  void wayWithinAPocket_staysARapid() {
    Move hop = Move.rapid(3, 0, 1.2);
    assertEquals(hop, of(Move.line(0, 0, 1.2, 100), hop).get(1));
  }
}
