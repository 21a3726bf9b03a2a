package plyscape.bend;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;

/**
 * Slows moves that the bend has made go down faster than a cutter may plunge. Keeps where the last
 * one ended. Not safe for use by several threads.
 */
public final class PlungeLimit {

  private final double plungeMmPerMin;
  private double x;
  private double y;
  private double depth;

  /**
   * From a place and depth.
   *
   * @param plungeMmPerMin greatest feed straight down; 0 when unknown, which limits nothing
   */
  public PlungeLimit(double plungeMmPerMin, double x, double y, double depth) {
    this.plungeMmPerMin = plungeMmPerMin;
    this.x = x;
    this.y = y;
    this.depth = depth;
  }

  /** The same moves, none going down faster. */
  public List<Move> of(List<Move> moves) {
    List<Move> out = new ArrayList<>(moves.size());
    for (Move move : moves) {
      out.add(slowed(move));
      x = move.x();
      y = move.y();
      depth = move.depth();
    }
    return out;
  }

  private Move slowed(Move move) {
    double down = move.depth() - depth;
    if (move.kind() == Move.Kind.RAPID || down <= 0 || plungeMmPerMin <= 0) {
      return move;
    }
    double flat =
        move.isArc()
            ? ArcGeometry.of(x, y, depth, move).length()
            : Math.hypot(Math.hypot(move.x() - x, move.y() - y), down);
    double most = plungeMmPerMin * flat / down;
    return move.feedMmPerMin() <= most
        ? move
        : new Move(
            move.kind(), move.x(), move.y(), move.depth(), move.centreX(), move.centreY(), most);
  }
}
