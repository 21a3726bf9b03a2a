package plyscape.toolpath.task;

import java.util.List;
import plyscape.machine.Move;

/**
 * One run of one tool at one depth over one or more pockets. The first move starts where the pass
 * before ended, the first of all at safe height; the last of all ends at safe height. Immutable.
 *
 * @param plyNumber ply whose pocket is cut
 * @param depthMm depth of the floor cut here
 * @param stepdownFromMm depth of the stock this pass starts from
 * @param moves in cutting order, panel mm
 * @param kind what it is for; of one that finishes sculpted faces the depth is its deepest, the ply
 *     the one there, and {@code stepdownFromMm} its shallowest
 */
public record Pass(
    int plyNumber, double depthMm, double stepdownFromMm, List<Move> moves, Kind kind) {

  /** What a pass is for. */
  public enum Kind {
    /** A pocket's floor. */
    POCKET,
    /** Sculpted faces. */
    FACES,
    /** Holes for pins. */
    PINS,
    /** The outline by which the piece comes free. */
    OUTLINE
  }

  /** A pass over a pocket at one depth. */
  public Pass(int plyNumber, double depthMm, double stepdownFromMm, List<Move> moves) {
    this(plyNumber, depthMm, stepdownFromMm, moves, Kind.POCKET);
  }

  /** Whether it follows sculpted faces. */
  public boolean finishing() {
    return kind == Kind.FACES;
  }
}
