package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.Move;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * A move of a run of the flat plan, found again by the line of the program that was written of it.
 * Immutable.
 *
 * @param pass its pass's index
 * @param index within the pass
 * @param before the move before it, which may be another pass's
 * @param deeperMm by how much the flat plan is deeper there than the program, mm
 */
record WrittenMove(int pass, int index, Move before, double deeperMm) {

  /** Ends of moves are the same within the text's rounding, mm. */
  private static final double SAME_MM = 2e-3;

  /** Moves that the program may lack one after the other. */
  private static final int MOST_LACKING = 4;

  /** The move of a line; null when there is none, or nothing before it. */
  static WrittenMove at(ToolRun run, Program parsed, int line) {
    WrittenMove same = same(run, parsed, line);
    return same != null ? same : bent(run, parsed, line);
  }

  /** The move with the same end, depth included. */
  private static WrittenMove same(ToolRun run, Program parsed, int line) {
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
          return before == null ? null : new WrittenMove(p, m, before, 0);
        }
      }
    }
    return null;
  }

  /**
   * The move of which the line is a part in a program that follows the panel as it lies: moves come
   * in the same order, seen from above they end where those of the flat plan do.
   */
  private static WrittenMove bent(ToolRun run, Program parsed, int line) {
    int pass = 0;
    int index = 0;
    for (Program.Block block : parsed.blocks()) {
      while (pass < run.passes().size() && index >= run.passes().get(pass).moves().size()) {
        pass++;
        index = 0;
      }
      if (pass == run.passes().size()) {
        return null;
      }
      List<Move> moves = run.passes().get(pass).moves();
      int end = index;
      while (end < Math.min(moves.size(), index + MOST_LACKING)
          && !above(block.move(), moves.get(end))) {
        end++;
      }
      boolean ends = end < moves.size() && above(block.move(), moves.get(end));
      index = ends ? end : index;
      if (block.line() >= line) {
        Move before = index > 0 ? moves.get(index - 1) : lastBefore(run, pass);
        double deeper = moves.get(index).depth() - block.move().depth();
        return before == null ? null : new WrittenMove(pass, index, before, deeper);
      }
      index += ends ? 1 : 0;
    }
    return null;
  }

  private static boolean same(Move a, Move b) {
    return a.kind() == b.kind() && above(a, b) && Math.abs(a.depth() - b.depth()) < SAME_MM;
  }

  /** Whether moves end at one place seen from above. */
  private static boolean above(Move a, Move b) {
    return Math.abs(a.x() - b.x()) < SAME_MM && Math.abs(a.y() - b.y()) < SAME_MM;
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

  /** The move itself. */
  Move move(ToolRun run) {
    return run.passes().get(pass).moves().get(index);
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
