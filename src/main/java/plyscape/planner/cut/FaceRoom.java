package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Move;
import plyscape.machine.Tool;

/**
 * Keeps rapids off a face that isn't flat: what would go on by rapid nearer to the face than its
 * flatness goes by feed instead. Paths come down to 0.2 mm over a face, which is enough for most.
 */
final class FaceRoom {

  /** More than the flatness by this much, mm. */
  private static final double MORE_MM = 0.05;

  private final double roomMm;
  private final Tool tool;

  /**
   * For one cutter.
   *
   * @param flatnessMm of the panel's top face
   */
  FaceRoom(double flatnessMm, Tool tool) {
    roomMm = flatnessMm + MORE_MM;
    this.tool = tool;
  }

  /**
   * The moves with slow ways near the face.
   *
   * @param from x, y and depth where the first move begins; becomes where the last one ends
   */
  List<Move> of(double[] from, List<Move> moves) {
    List<Move> out = new ArrayList<>(moves.size());
    for (Move move : moves) {
      if (move.kind() == Move.Kind.RAPID) {
        rapid(from, move, out);
      } else {
        out.add(move);
      }
      from[0] = move.x();
      from[1] = move.y();
      from[2] = move.depth();
    }
    return out;
  }

  private void rapid(double[] from, Move move, List<Move> out) {
    boolean along = move.x() != from[0] || move.y() != from[1];
    boolean down = move.depth() > from[2];
    boolean near = near(move.depth()) || along && near(from[2]);
    if (!near || !along && !down) {
      out.add(move);
    } else if (along) {
      out.add(Move.line(move.x(), move.y(), move.depth(), tool.feedMmPerMin()));
    } else {
      if (from[2] < -roomMm) {
        out.add(Move.rapid(move.x(), move.y(), -roomMm));
      }
      out.add(Move.line(move.x(), move.y(), move.depth(), tool.plungeMmPerMin()));
    }
  }

  /** Over the face, but nearer to it than there must be room. */
  private boolean near(double depth) {
    return depth <= 0 && depth > -roomMm;
  }
}
