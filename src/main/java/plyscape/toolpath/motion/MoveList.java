package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Move;

/**
 * Collects moves and knows where they have come to; panel mm, depth positive down. Moves of no
 * length are left out.
 */
public final class MoveList {

  private final List<Move> moves = new ArrayList<>();
  public double x;
  public double y;
  public double depth;

  /** Starts at a place. */
  public MoveList(double x, double y, double depth) {
    this.x = x;
    this.y = y;
    this.depth = depth;
  }

  /** A rapid. */
  public void rapid(double toX, double toY, double toDepth) {
    if (toX != x || toY != y || toDepth != depth) {
      add(Move.rapid(toX, toY, toDepth));
    }
  }

  /** A straight cut. */
  public void line(double toX, double toY, double toDepth, double feedMmPerMin) {
    if (toX != x || toY != y || toDepth != depth) {
      add(Move.line(toX, toY, toDepth, feedMmPerMin));
    }
  }

  /** An arc. */
  void arc(
      boolean clockwise,
      double toX,
      double toY,
      double toDepth,
      double cx,
      double cy,
      double feedMmPerMin) {
    add(Move.arc(clockwise, toX, toY, toDepth, cx, cy, feedMmPerMin));
  }

  /** Moves that go on from here. */
  void addAll(List<Move> more) {
    more.forEach(this::add);
  }

  private void add(Move move) {
    moves.add(move);
    x = move.x();
    y = move.y();
    depth = move.depth();
  }

  /** All so far. */
  public List<Move> moves() {
    return List.copyOf(moves);
  }
}
