package plyscape.toolpath.cover;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.toolpath.ring.Piece;

/**
 * How near ways along walls come to places, by distances that follow from where the ways were put.
 */
class CutPathsTest {

  private static final double REST = 0.03;

  /** Round a square of 20 mm, 1.5 mm off its walls. */
  private static final Piece ROUND =
      new Piece(0, true, new double[] {1.5, 18.5, 18.5, 1.5}, new double[] {1.5, 1.5, 18.5, 18.5});

  private static CutPaths round() {
    CutPaths paths = new CutPaths();
    paths.add(List.of(ROUND), 1.5, 2);
    return paths;
  }

  @Test
  void wallsAreTouchedAllRoundAndCornersAreNot() {
    CutPaths paths = round();
    for (double along = 1.5; along <= 18.5; along += 0.5) {
      assertTrue(paths.reach(along, 0, REST, 2), "bottom at " + along);
      assertTrue(paths.reach(20, along, REST, 2), "right at " + along);
      assertTrue(paths.reach(along, 20, REST, 2), "top at " + along);
      // The line that closes it.
      assertTrue(paths.reach(0, along, REST, 2), "left at " + along);
    }
    // A round cutter of radius r leaves r (sqrt 2 - 1) = 0.62 mm in a square corner; it touches
    // its walls within sqrt((r + rest)2 - r2) = 0.30 mm of where it turns.
    assertFalse(paths.reach(0, 0, REST, 2));
    assertTrue(paths.reach(1.21, 0, REST, 2));
    assertFalse(paths.reach(1.19, 0, REST, 2));
  }

  @Test
  void cutsDeepEnoughCountAndShallowerOnesDont() {
    assertTrue(round().reach(10, 0, REST, 1));
    assertFalse(round().reach(10, 0, REST, 2.1));
  }

  @Test
  void onlyWaysAlongWallsCount() {
    CutPaths paths = new CutPaths();
    paths.add(List.of(new Piece(2, true, ROUND.x(), ROUND.y())), 1.5, 2);
    assertFalse(paths.reach(10, 0, REST, 2));
  }

  @Test
  void anotherChoiceOfCuttersLeavesTheFirstAsItWas() {
    CutPaths paths = round();
    CutPaths copy = paths.copy();
    copy.add(
        List.of(new Piece(0, false, new double[] {0.75, 0.75}, new double[] {0.75, 1})), 0.75, 2);
    assertTrue(copy.reach(0.75, 0, REST, 2));
    assertFalse(paths.reach(0.75, 0, REST, 2));
  }
}
