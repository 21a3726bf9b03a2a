package plyscape.bend;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Delaunay triangulation of points in the plane: a sweep from left to right, then flips (Lawson,
 * 1977). Covers the convex hull without gaps. Where four points lie on one circle, the diagonal
 * that holds the one farthest left (of those the lowest) is taken, so that the outcome doesn't
 * depend on the points' order. Takes time with points times hull, and memory with the points.
 */
final class Delaunay {

  /** Points this near to a circle, as a share of the fourth power of their extent, are on it. */
  private static final double ON_CIRCLE = 1e-9;

  private final double[] x;
  private final double[] y;

  /** Third corner of the triangle to the left of a directed edge. */
  private final Map<Long, Integer> left = new HashMap<>();

  private final List<Integer> hull = new ArrayList<>();

  /**
   * Triangulates.
   *
   * @param x of the points, no two alike
   * @param y of the points
   * @throws IllegalArgumentException if all lie in a line
   */
  Delaunay(double[] x, double[] y) {
    this.x = x;
    this.y = y;
    sweep();
    flip();
  }

  /** Corners of the triangles, three each, counter-clockwise; in order of their corners. */
  List<int[]> triangles() {
    List<int[]> out = new ArrayList<>();
    left.forEach(
        (edge, c) -> {
          int a = (int) (edge >> 32);
          int b = edge.intValue();
          if (a < b && a < c) {
            out.add(new int[] {a, b, c});
          }
        });
    out.sort(
        Comparator.<int[]>comparingInt(t -> t[0])
            .thenComparingInt(t -> t[1])
            .thenComparingInt(t -> t[2]));
    return out;
  }

  /** Corners of the hull, counter-clockwise. */
  List<Integer> hull() {
    return List.copyOf(hull);
  }

  private void sweep() {
    List<Integer> order =
        IntStream.range(0, x.length)
            .boxed()
            .sorted(Comparator.<Integer>comparingDouble(i -> x[i]).thenComparingDouble(i -> y[i]))
            .toList();
    int apex = 2;
    while (apex < order.size() && turn(order.get(0), order.get(1), order.get(apex)) == 0) {
      apex++;
    }
    if (apex >= order.size()) {
      throw new IllegalArgumentException("all points lie in a line");
    }
    int tip = order.get(apex);
    boolean leftTurn = turn(order.get(0), order.get(1), tip) > 0;
    for (int i = 0; i + 1 < apex; i++) {
      int a = order.get(leftTurn ? i : i + 1);
      int b = order.get(leftTurn ? i + 1 : i);
      triangle(a, b, tip);
    }
    List<Integer> base = new ArrayList<>(order.subList(0, apex));
    if (!leftTurn) {
      java.util.Collections.reverse(base);
    }
    hull.addAll(base);
    hull.add(tip);
    for (int i = apex + 1; i < order.size(); i++) {
      add(order.get(i));
    }
  }

  /** Joins a point right of all others to the edges of the hull that see it. */
  private void add(int p) {
    int n = hull.size();
    boolean[] seen = new boolean[n];
    for (int i = 0; i < n; i++) {
      seen[i] = turn(hull.get(i), hull.get((i + 1) % n), p) < 0;
    }
    List<Integer> next = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      boolean before = seen[(i + n - 1) % n];
      if (!(before && seen[i])) {
        next.add(hull.get(i));
      }
      if (seen[i]) {
        triangle(hull.get((i + 1) % n), hull.get(i), p);
        if (!before) {
          next.add(p);
        }
      }
    }
    hull.clear();
    hull.addAll(next);
  }

  private void flip() {
    Deque<Long> edges = new ArrayDeque<>(left.keySet().stream().sorted().toList());
    long most = 200L + 100L * x.length * x.length;
    for (long step = 0; !edges.isEmpty() && step < most; step++) {
      long edge = edges.pop();
      int a = (int) (edge >> 32);
      int b = (int) edge;
      Integer c = left.get(key(a, b));
      Integer d = left.get(key(b, a));
      if (c != null && d != null && shouldFlip(a, b, c, d)) {
        left.remove(key(a, b));
        left.remove(key(b, a));
        triangle(c, a, d);
        triangle(d, b, c);
        for (long outer : new long[] {key(a, d), key(d, b), key(b, c), key(c, a)}) {
          edges.push(outer);
        }
      }
    }
  }

  private boolean shouldFlip(int a, int b, int c, int d) {
    if (turn(c, a, d) <= 0 || turn(d, b, c) <= 0) {
      return false;
    }
    double inside = inCircle(a, b, c, d);
    if (inside != 0) {
      return inside > 0;
    }
    int first = first(first(a, b), first(c, d));
    return first == c || first == d;
  }

  private int first(int a, int b) {
    boolean smaller = x[a] < x[b] || (x[a] == x[b] && y[a] < y[b]);
    return smaller ? a : b;
  }

  /** Positive if d lies inside the circle through a, b, c (counter-clockwise), 0 if on it. */
  private double inCircle(int a, int b, int c, int d) {
    double ax = x[a] - x[d];
    double ay = y[a] - y[d];
    double bx = x[b] - x[d];
    double by = y[b] - y[d];
    double cx = x[c] - x[d];
    double cy = y[c] - y[d];
    double aa = ax * ax + ay * ay;
    double bb = bx * bx + by * by;
    double cc = cx * cx + cy * cy;
    double value = ax * (by * cc - bb * cy) - ay * (bx * cc - bb * cx) + aa * (bx * cy - by * cx);
    double extent = Math.max(aa, Math.max(bb, cc));
    return Math.abs(value) <= ON_CIRCLE * extent * extent ? 0 : value;
  }

  /** Positive if the way from a over b to c turns left, 0 if it goes straight on. */
  private double turn(int a, int b, int c) {
    double first = (x[b] - x[a]) * (y[c] - y[a]);
    double second = (y[b] - y[a]) * (x[c] - x[a]);
    double value = first - second;
    return Math.abs(value) <= 1e-12 * (Math.abs(first) + Math.abs(second)) ? 0 : value;
  }

  private void triangle(int a, int b, int c) {
    left.put(key(a, b), c);
    left.put(key(b, c), a);
    left.put(key(c, a), b);
  }

  private static long key(int a, int b) {
    return (long) a << 32 | b;
  }
}
