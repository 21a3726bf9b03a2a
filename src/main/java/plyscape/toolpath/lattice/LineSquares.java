package plyscape.toolpath.lattice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Straight lines, each with what it belongs to, in squares by which those near a place are found
 * without looking at the others; mm. Not for several threads while lines are added.
 *
 * @param <T> what lines belong to
 */
public final class LineSquares<T> {

  /** Longer lines are divided, so that they don't lie in squares far from them, in squares. */
  private static final double LONGEST = 4;

  private record Line<T>(T of, double ax, double ay, double bx, double by) {

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

  private final double sideMm;
  private final Map<Long, List<Line<T>>> squares = new HashMap<>();

  /**
   * @param sideMm of a square: about as far as questions look, or a little more
   */
  public LineSquares(double sideMm) {
    this.sideMm = sideMm;
  }

  /** The same lines once more, to which others can be added. */
  public LineSquares<T> copy() {
    LineSquares<T> copy = new LineSquares<>(sideMm);
    squares.forEach((square, in) -> copy.squares.put(square, new ArrayList<>(in)));
    return copy;
  }

  /** Adds the lines between points, and from the last to the first if they close. */
  public void add(T of, double[] x, double[] y, boolean closed) {
    int n = x.length;
    for (int i = 1; i < Math.max(2, n + (closed ? 1 : 0)); i++) {
      double ax = x[i - 1];
      double ay = y[i - 1];
      double dx = x[i % n] - ax;
      double dy = y[i % n] - ay;
      int parts = Math.max(1, (int) Math.ceil(Math.hypot(dx, dy) / (LONGEST * sideMm)));
      for (int p = 0; p < parts; p++) {
        double s = (double) p / parts;
        double t = (p + 1.0) / parts;
        enter(new Line<>(of, ax + s * dx, ay + s * dy, ax + t * dx, ay + t * dy));
      }
    }
  }

  private void enter(Line<T> line) {
    int right = square(Math.max(line.ax, line.bx));
    int top = square(Math.max(line.ay, line.by));
    for (int b = square(Math.min(line.ay, line.by)); b <= top; b++) {
      for (int a = square(Math.min(line.ax, line.bx)); a <= right; a++) {
        squares.computeIfAbsent(key(a, b), k -> new ArrayList<>()).add(line);
      }
    }
  }

  /** Hands over what lines within a distance of a place belong to, in the order of squares. */
  public void near(double x, double y, double withinMm, Consumer<T> found) {
    int right = square(x + withinMm);
    int top = square(y + withinMm);
    double squared = withinMm * withinMm;
    for (int b = square(y - withinMm); b <= top; b++) {
      for (int a = square(x - withinMm); a <= right; a++) {
        for (Line<T> line : squares.getOrDefault(key(a, b), List.of())) {
          if (line.squaredDistance(x, y) <= squared) {
            found.accept(line.of);
          }
        }
      }
    }
  }

  private int square(double mm) {
    return (int) Math.floor(mm / sideMm);
  }

  private static long key(int a, int b) {
    return ((long) a << 32) + b;
  }
}
