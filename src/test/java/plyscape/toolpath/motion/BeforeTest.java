package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import plyscape.toolpath.ring.Piece;

/** A stretch cut from its other end still knows on which side its wall is. */
class BeforeTest {

  @Test
  void turnedRoundItRunsAgainstTheDirectionOfWalls() {
    Piece wall = new Piece(0, false, new double[] {0, 5, 9}, new double[] {1, 1, 3});
    BiteLimit.Before once = new BiteLimit.Before(null, wall).reversed();
    assertArrayEquals(new double[] {9, 5, 0}, once.piece().x());
    assertTrue(once.piece().against());
    assertEquals(0, once.piece().index());
    assertFalse(once.reversed().piece().against(), "turned round twice it is as it was");
  }

  @Test
  void aRoundLaidInTheOtherDirectionIsNotAgainstIt() {
    Piece wall = new Piece(0, false, new double[] {0, 5}, new double[] {0, 0});
    assertFalse(wall.reversed().against(), "all walls conventional: that is then their direction");
  }
}
