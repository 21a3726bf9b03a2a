package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.simulate.stroke.ToolForm;

class FaceWallsTest {

  private static final Box PANEL = new Box(0, 0, 38.3, 43.1);

  /**
   * A ball's axis just as far from a wall as it must keep off: the wall counts, whether it was read
   * as 5.9 or, by turning Y over, as a last bit less.
   */
  @Test
  void wallAtTheVeryReach_countsHoweverItIsRounded() {
    ToolForm ball = ToolForm.of(Workshop.cutter("ball", Tool.Shape.BALL, 2, 12));
    for (double wall : new double[] {5.9, 43.1 - 37.2, Math.nextUp(5.9)}) {
      double[] ring = TargetsTest.square(6, wall, 32, 37);
      FaceWalls walls =
          new FaceWalls(PANEL, List.of(new Target(2, 3.86, new double[][] {ring})), null);
      assertEquals(1, walls.deepestTip(ball, 0.05, 20, 6.95, false), 1e-6, "wall at " + wall);
      assertEquals(
          Double.POSITIVE_INFINITY, walls.deepestTip(ball, 0.05, 20, 6.951, false), "" + wall);
    }
  }
}
