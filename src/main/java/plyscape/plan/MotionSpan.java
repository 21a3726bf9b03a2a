package plyscape.plan;

import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;

/**
 * What a cutter's tip moves over, panel coordinates, mm, depth positive down; arcs with their
 * bulges. Immutable.
 *
 * @param minX west
 * @param minY south
 * @param maxX east
 * @param maxY north
 * @param minDepth highest; negative above the panel
 * @param maxDepth deepest
 */
public record MotionSpan(
    double minX, double minY, double maxX, double maxY, double minDepth, double maxDepth) {

  /** Checks that no side is turned round. */
  public MotionSpan {
    if (!(minX <= maxX && minY <= maxY && minDepth <= maxDepth)) {
      throw new IllegalArgumentException("a span of nothing");
    }
  }

  /** Of a whole program, from where the cutter is taken to stand at first. */
  public static MotionSpan whole(Program program) {
    return below(program, Double.NEGATIVE_INFINITY);
  }

  /** Of several programs; at least one. */
  public static MotionSpan around(List<MotionSpan> spans) {
    return spans.stream()
        .reduce(
            (a, b) ->
                new MotionSpan(
                    Math.min(a.minX, b.minX),
                    Math.min(a.minY, b.minY),
                    Math.max(a.maxX, b.maxX),
                    Math.max(a.maxY, b.maxY),
                    Math.min(a.minDepth, b.minDepth),
                    Math.max(a.maxDepth, b.maxDepth)))
        .orElseThrow(() -> new IllegalArgumentException("no program"));
  }

  /**
   * Of the motions that come below a height, or of the whole when none does.
   *
   * @param clearDepth as a depth: negative above the panel
   */
  public static MotionSpan below(Program program, double clearDepth) {
    Growing box = new Growing();
    double x = program.startX();
    double y = program.startY();
    double depth = program.startDepth();
    if (depth > clearDepth) {
      box.point(x, y, depth);
    }
    for (Program.Block block : program.blocks()) {
      Move move = block.move();
      if (depth > clearDepth || move.depth() > clearDepth) {
        box.point(x, y, depth);
        box.point(move.x(), move.y(), move.depth());
        if (move.isArc()) {
          box.bulges(x, y, depth, move);
        }
      }
      x = move.x();
      y = move.y();
      depth = move.depth();
    }
    return box.empty() ? whole(program) : box.span();
  }

  private static final class Growing {
    private final double[] low = {
      Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY
    };
    private final double[] high = {
      Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
    };

    void point(double x, double y, double depth) {
      low[0] = Math.min(low[0], x);
      low[1] = Math.min(low[1], y);
      low[2] = Math.min(low[2], depth);
      high[0] = Math.max(high[0], x);
      high[1] = Math.max(high[1], y);
      high[2] = Math.max(high[2], depth);
    }

    /** The ends of the axes on the circle that the arc passes. */
    void bulges(double x, double y, double depth, Move move) {
      ArcGeometry arc = ArcGeometry.of(x, y, depth, move);
      double first = arc.sweep() > 0 ? arc.startAngle() : arc.startAngle() + arc.sweep();
      double last = first + Math.abs(arc.sweep());
      double quarter = Math.PI / 2;
      for (long k = (long) Math.ceil(first / quarter); k * quarter <= last; k++) {
        int side = (int) Math.floorMod(k, 4L);
        double dx = side == 0 ? arc.radius() : side == 2 ? -arc.radius() : 0;
        double dy = side == 1 ? arc.radius() : side == 3 ? -arc.radius() : 0;
        point(move.centreX() + dx, move.centreY() + dy, move.depth());
      }
    }

    boolean empty() {
      return low[0] > high[0];
    }

    MotionSpan span() {
      return new MotionSpan(low[0], low[1], high[0], high[1], low[2], high[2]);
    }
  }
}
