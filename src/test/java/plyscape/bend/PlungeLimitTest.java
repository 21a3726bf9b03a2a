package plyscape.bend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.machine.Move;

class PlungeLimitTest {

  /** Three down on five along the way: 600 down is 1000 along it. */
  @Test
  void onlyWhatGoesDownTooFast_isSlowed() {
    List<Move> out =
        new PlungeLimit(600, 0, 0, 0)
            .of(
                List.of(
                    Move.line(4, 0, 3, 1800),
                    Move.line(8, 0, 0, 1800),
                    Move.line(12, 0, 0.1, 1800),
                    Move.rapid(12, 0, 5)));
    assertEquals(1000, out.get(0).feedMmPerMin(), 1e-9);
    assertEquals(1800, out.get(1).feedMmPerMin());
    assertEquals(1800, out.get(2).feedMmPerMin());
    assertEquals(Move.Kind.RAPID, out.get(3).kind());
  }
}
