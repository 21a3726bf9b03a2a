package plyscape.toolpath.task;

import java.util.List;
import plyscape.machine.Move;
import plyscape.machine.Tool;

/** All passes of one tool, in cutting order: one G-code file. Immutable. */
public record ToolRun(Tool tool, List<Pass> passes) {

  /** The moves of all passes. */
  public List<Move> moves() {
    return passes.stream().flatMap(pass -> pass.moves().stream()).toList();
  }
}
