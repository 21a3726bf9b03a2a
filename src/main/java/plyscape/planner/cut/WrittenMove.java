package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.Move;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * A move of a run, found again by the line of the program that was written of it. Immutable.
 *
 * @param pass its pass's index
 * @param index within the pass
 * @param before the move before it, which may be another pass's
 */
record WrittenMove(int pass, int index, Move before) {

  /** Ends of moves are the same within the text's rounding, mm. */
  private static final double SAME_MM = 2e-3;

  /** The move of a line; null when there is none, or nothing before it. */
  static WrittenMove at(ToolRun run, Program parsed, int line) {
    Move end = null;
    for (Program.Block block : parsed.blocks()) {
      end = block.line() == line ? block.move() : end;
    }
    if (end == null) {
      return null;
    }
    int count = 0;
    for (Program.Block block : parsed.blocks()) {
      count += block.line() <= line && same(block.move(), end) ? 1 : 0;
    }
    for (int p = 0; p < run.passes().size(); p++) {
      List<Move> moves = run.passes().get(p).moves();
      for (int m = 0; m < moves.size(); m++) {
        count -= same(moves.get(m), end) ? 1 : 0;
        if (count == 0) {
          Move before = m > 0 ? moves.get(m - 1) : lastBefore(run, p);
          return before == null ? null : new WrittenMove(p, m, before);
        }
      }
    }
    return null;
  }

  private static boolean same(Move a, Move b) {
    return a.kind() == b.kind()
        && Math.abs(a.x() - b.x()) < SAME_MM
        && Math.abs(a.y() - b.y()) < SAME_MM
        && Math.abs(a.depth() - b.depth()) < SAME_MM;
  }

  private static Move lastBefore(ToolRun run, int pass) {
    for (int p = pass - 1; p >= 0; p--) {
      List<Move> moves = run.passes().get(p).moves();
      if (!moves.isEmpty()) {
        return moves.get(moves.size() - 1);
      }
    }
    return null;
  }

  /** The run with other moves in its pass. */
  ToolRun with(ToolRun run, List<Move> moves) {
    List<Pass> passes = new ArrayList<>(run.passes());
    Pass old = passes.get(pass);
    passes.set(
        pass, new Pass(old.plyNumber(), old.depthMm(), old.stepdownFromMm(), moves, old.kind()));
    return new ToolRun(run.tool(), passes);
  }
}
