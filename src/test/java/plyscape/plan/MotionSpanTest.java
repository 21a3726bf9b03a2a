package plyscape.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.gcode.Program;
import plyscape.machine.Move;

/** Spans of programs against what circles and lines say. */
class MotionSpanTest {

  @Test
  void lines_spanTheirEnds_andTheStart() {
    MotionSpan span =
        MotionSpan.whole(
            program(Move.rapid(10, 20, -4), Move.line(10, 20, 2, 300), Move.line(30, 5, 2, 900)));
    assertEquals(new MotionSpan(0, 0, 30, 20, -4, 2), span);
  }

  @Test
  void arcs_bulgeBeyondTheirEnds() {
    // From (10, 0) about (0, 0) counterclockwise to (-10, 0): over the top, not below.
    assertEquals(
        new MotionSpan(-10, 0, 10, 10, -4, 1),
        MotionSpan.below(
            program(Move.line(10, 0, 1, 500), Move.arc(false, -10, 0, 1, 0, 0, 500)), -5));
    // The same ends clockwise: below.
    assertEquals(
        -10,
        MotionSpan.whole(program(Move.line(10, 0, 1, 500), Move.arc(true, -10, 0, 1, 0, 0, 500)))
            .minY(),
        1e-9);
    // A whole round about (5, 0).
    MotionSpan round =
        MotionSpan.whole(program(Move.line(8, 0, 1, 500), Move.arc(true, 8, 0, 1, 5, 0, 500)));
    assertEquals(0, round.minX(), 1e-9);
    assertEquals(3, round.maxY(), 1e-9);
    assertEquals(-3, round.minY(), 1e-9);
    // An eighth of a round passes no end of an axis.
    double s = Math.sqrt(0.5);
    MotionSpan eighth =
        MotionSpan.below(
            program(
                Move.line(Math.cos(0.2), Math.sin(0.2), 1, 500),
                Move.arc(false, s, s, 1, 0, 0, 500)),
            0.5);
    assertEquals(Math.cos(0.2), eighth.maxX(), 1e-9);
    assertEquals(s, eighth.maxY(), 1e-9);
  }

  @Test
  void below_leavesOutWhatIsHigh() {
    Program program =
        program(
            Move.rapid(90, 90, -4),
            Move.rapid(40, 40, -4),
            Move.line(40, 40, 1, 300),
            Move.line(50, 40, 1, 900),
            Move.rapid(50, 40, -4));
    assertEquals(new MotionSpan(40, 40, 50, 40, -4, 1), MotionSpan.below(program, -3.999));
    assertEquals(MotionSpan.whole(program), MotionSpan.below(program, 5), "nothing is lower");
  }

  @Test
  void around_nothing_isRefused() {
    assertThrows(IllegalArgumentException.class, () -> MotionSpan.around(List.of()));
    assertThrows(IllegalArgumentException.class, () -> new MotionSpan(1, 0, 0, 0, 0, 0));
  }

  private static Program program(Move... moves) {
    List<Program.Block> blocks = new java.util.ArrayList<>();
    for (Move move : moves) {
      blocks.add(new Program.Block(blocks.size() + 1, move, true));
    }
    return new Program("01.nc", 0, 0, -4, blocks, List.of(), List.of());
  }
}
