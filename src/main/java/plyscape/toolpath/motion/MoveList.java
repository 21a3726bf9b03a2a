package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Move;

/**
 * Collects moves and knows where they have come to; panel mm, depth positive down. Moves of no
 * length are left out.
 */
public final class MoveList {

  /** Arcs of larger radius are cut straight, mm. */
  private static final double STRAIGHT_MM = 500;

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

  /** An arc; a line where it is as good as straight. */
  void arc(Biarc.Arc arc, double toDepth, double feedMmPerMin) {
    double cx = arc.centreX();
    double cy = arc.centreY();
    if (arc.straight() || arc.radiusMm() > STRAIGHT_MM) {
      line(arc.x(), arc.y(), toDepth, feedMmPerMin);
    } else {
      add(Move.arc(arc.clockwise(), arc.x(), arc.y(), toDepth, cx, cy, feedMmPerMin));
    }
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
