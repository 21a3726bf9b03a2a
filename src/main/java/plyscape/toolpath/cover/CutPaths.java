package plyscape.toolpath.cover;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import plyscape.toolpath.ring.Piece;

/**
 * The ways of the centres of cutters along walls, as chosen so far, and how near they come to a
 * place of a wall. Lines lie in squares, so that few need be looked at. Not for several threads.
 */
final class CutPaths {

  /** Longer lines are divided, so that they don't lie in squares far from them, mm. */
  private static final double LINE_MM = 2;

  /** Cuts to a depth at most so much higher count as deep enough, mm. */
  private static final double SAME_MM = 1e-6;

  private record Line(double ax, double ay, double bx, double by, double depth) {

    double squaredDistance(double x, double y) {
      double dx = bx - ax;
      double dy = by - ay;
      double squared = dx * dx + dy * dy;
      double t = squared == 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / squared;
      t = Math.max(0, Math.min(1, t));
      double ex = ax + t * dx - x;
      double ey = ay + t * dy - y;
      return ex * ex + ey * ey;
    }
  }

  /** Lines of each radius, in squares as wide as it. */
  private final Map<Double, Map<Long, List<Line>>> lines = new TreeMap<>();

  CutPaths() {}

  /** The same ways once more, to which others can be added. */
  CutPaths copy() {
    CutPaths copy = new CutPaths();
    lines.forEach(
        (radius, squares) -> {
          Map<Long, List<Line>> same = new HashMap<>();
          squares.forEach((square, in) -> same.put(square, new ArrayList<>(in)));
          copy.lines.put(radius, same);
        });
    return copy;
  }

  /** Adds those of pieces that run along walls. */
  void add(List<Piece> pieces, double radiusMm, double depthMm) {
    Map<Long, List<Line>> squares = lines.computeIfAbsent(radiusMm, r -> new HashMap<>());
    for (Piece piece : pieces) {
      if (piece.slot() != null) {
        add(Piece.of(piece.slot().side(true)), radiusMm, depthMm, squares);
        add(Piece.of(piece.slot().side(false)), radiusMm, depthMm, squares);
      } else if (piece.wall()) {
        add(piece, radiusMm, depthMm, squares);
      }
    }
  }

  private static void add(Piece piece, double side, double depthMm, Map<Long, List<Line>> squares) {
    int n = piece.size();
    double[] x = piece.x();
    double[] y = piece.y();
    for (int i = 1; i < Math.max(2, n + (piece.closed() ? 1 : 0)); i++) {
      double ax = x[i - 1];
      double ay = y[i - 1];
      double dx = x[i % n] - ax;
      double dy = y[i % n] - ay;
      int parts = Math.max(1, (int) Math.ceil(Math.hypot(dx, dy) / LINE_MM));
      for (int p = 0; p < parts; p++) {
        double s = (double) p / parts;
        double t = (p + 1.0) / parts;
        enter(new Line(ax + s * dx, ay + s * dy, ax + t * dx, ay + t * dy, depthMm), side, squares);
      }
    }
  }

  private static void enter(Line line, double side, Map<Long, List<Line>> squares) {
    int right = square(Math.max(line.ax, line.bx), side);
    int top = square(Math.max(line.ay, line.by), side);
    for (int b = square(Math.min(line.ay, line.by), side); b <= top; b++) {
      for (int a = square(Math.min(line.ax, line.bx), side); a <= right; a++) {
        squares.computeIfAbsent(key(a, b), k -> new ArrayList<>()).add(line);
      }
    }
  }

  private static int square(double mm, double side) {
    return (int) Math.floor(mm / side);
  }

  private static long key(int a, int b) {
    return ((long) a << 32) + b;
  }

  /** Whether a cutter has come as near to a place as this at least as deep as that, mm. */
  boolean reach(double x, double y, double withinMm, double depthMm) {
    for (Map.Entry<Double, Map<Long, List<Line>>> cutter : lines.entrySet()) {
      double radius = cutter.getKey();
      if (reach(x, y, radius, radius + withinMm, depthMm - SAME_MM, cutter.getValue())) {
        return true;
      }
    }
    return false;
  }

  private static boolean reach(
      double x,
      double y,
      double side,
      double reachMm,
      double depthMm,
      Map<Long, List<Line>> squares) {
    int right = square(x + reachMm, side);
    int top = square(y + reachMm, side);
    for (int b = square(y - reachMm, side); b <= top; b++) {
      for (int a = square(x - reachMm, side); a <= right; a++) {
        for (Line line : squares.getOrDefault(key(a, b), List.of())) {
          if (line.depth >= depthMm && line.squaredDistance(x, y) <= reachMm * reachMm) {
            return true;
          }
        }
      }
    }
    return false;
  }
}
