package plyscape.toolpath.cover;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import plyscape.toolpath.lattice.LineSquares;
import plyscape.toolpath.ring.Piece;

/**
 * The ways of the centres of cutters along walls, as chosen so far, and how near they come to a
 * place of a wall. Not for several threads.
 */
final class CutPaths {

  /** Cuts to a depth at most so much higher count as deep enough, mm. */
  private static final double SAME_MM = 1e-6;

  /** Lines of each radius, with their depths, in squares as wide as it. */
  private final Map<Double, LineSquares<Double>> lines = new TreeMap<>();

  CutPaths() {}

  /** The same ways once more, to which others can be added. */
  CutPaths copy() {
    CutPaths copy = new CutPaths();
    lines.forEach((radius, squares) -> copy.lines.put(radius, squares.copy()));
    return copy;
  }

  /** Adds those of pieces that run along walls. */
  void add(List<Piece> pieces, double radiusMm, double depthMm) {
    LineSquares<Double> squares = lines.computeIfAbsent(radiusMm, LineSquares::new);
    for (Piece piece : pieces) {
      if (piece.slot() != null) {
        add(Piece.of(piece.slot().side(true)), depthMm, squares);
        add(Piece.of(piece.slot().side(false)), depthMm, squares);
      } else if (piece.wall()) {
        add(piece, depthMm, squares);
      }
    }
  }

  private static void add(Piece piece, double depthMm, LineSquares<Double> squares) {
    squares.add(depthMm, piece.x(), piece.y(), piece.closed());
  }

  /** Whether a cutter has come as near to a place as this at least as deep as that, mm. */
  boolean reach(double x, double y, double withinMm, double depthMm) {
    for (Map.Entry<Double, LineSquares<Double>> cutter : lines.entrySet()) {
      double[] deepest = {Double.NEGATIVE_INFINITY};
      cutter
          .getValue()
          .near(
              x, y, cutter.getKey() + withinMm, depth -> deepest[0] = Math.max(deepest[0], depth));
      if (deepest[0] >= depthMm - SAME_MM) {
        return true;
      }
    }
    return false;
  }
}
