package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.Move;
import plyscape.simulate.Verification;
import plyscape.toolpath.task.ToolRun;

/**
 * Rapids that the simulation finds in wood, taken over it: up to safe height, across, down to just
 * over the face, and from there by the plunge feed.
 */
final class LiftedRapids {

  /** Above the face rapids end here, mm. */
  private static final double TOUCH_MM = 0.2;

  private LiftedRapids() {}

  /**
   * The run with its rapids lifted; null when none of its rapids met wood.
   *
   * @param file the program's name
   * @param safe depth of safe height, negative
   */
  static ToolRun of(
      ToolRun run,
      Program parsed,
      String file,
      List<Verification.Collision> collisions,
      double safe) {
    List<Integer> lines =
        collisions.stream()
            .filter(c -> c.file().equals(file) && c.what().startsWith("rapid through stock"))
            .map(Verification.Collision::line)
            .distinct()
            // From the last on, so that what was found by its count before stays where it is.
            .sorted(Comparator.reverseOrder())
            .toList();
    ToolRun out = null;
    for (int line : lines) {
      ToolRun from = out == null ? run : out;
      WrittenMove at = WrittenMove.at(from, parsed, line);
      if (at != null && at.move(from).kind() == Move.Kind.RAPID) {
        out = at.with(from, lifted(from, at, safe));
      }
    }
    return out;
  }

  private static List<Move> lifted(ToolRun run, WrittenMove at, double safe) {
    List<Move> moves = run.passes().get(at.pass()).moves();
    Move rapid = at.move(run);
    List<Move> out = new ArrayList<>(moves.subList(0, at.index()));
    if (at.before().depth() > safe) {
      out.add(Move.rapid(at.before().x(), at.before().y(), safe));
    }
    if (rapid.x() != at.before().x() || rapid.y() != at.before().y()) {
      out.add(Move.rapid(rapid.x(), rapid.y(), safe));
    }
    if (rapid.depth() > -TOUCH_MM) {
      out.add(Move.rapid(rapid.x(), rapid.y(), -TOUCH_MM));
      out.add(Move.line(rapid.x(), rapid.y(), rapid.depth(), run.tool().plungeMmPerMin()));
    } else if (rapid.depth() > safe) {
      out.add(Move.rapid(rapid.x(), rapid.y(), rapid.depth()));
    }
    out.addAll(moves.subList(at.index() + 1, moves.size()));
    return out;
  }
}
