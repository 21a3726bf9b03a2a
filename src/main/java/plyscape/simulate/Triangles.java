package plyscape.simulate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Delaunay triangles over scattered places, by inserting one place after the other and filling the
 * hole of all triangles whose circles hold it (Bowyer 1981, Watson 1981: from memory). Meant for
 * some hundred places: each costs a look at all triangles.
 *
 * <p>Of four places on one circle the diagonal from the leftmost, of those the lowest, is taken, so
 * that the face doesn't depend on the order of the readings. Immutable.
 */
final class Triangles {

  /** A circle holds a place that lies inside by more than this share of its square. */
  private static final double ON_CIRCLE = 1e-9;

  /** How far a place may lie outside a triangle, as a share of its size, and count as inside. */
  private static final double ON_EDGE = 1e-9;

  private final double[][] places;
  private final int[][] triangles;
  private final int[][] hull;
  private volatile int last;

  private Triangles(double[][] places, List<int[]> triangles) {
    this.places = places;
    this.triangles = triangles.toArray(int[][]::new);
    this.hull = border(triangles).toArray(int[][]::new);
  }

  /**
   * Triangulates.
   *
   * @param readings x, y, height each; no two at one place
   * @throws IllegalArgumentException if all are in line
   */
  static Triangles over(List<double[]> readings) {
    List<double[]> sorted = new ArrayList<>(readings);
    sorted.sort(Comparator.<double[]>comparingDouble(r -> r[0]).thenComparingDouble(r -> r[1]));
    double[][] p = sorted.toArray(double[][]::new);
    int n = p.length;
    int third = 2;
    while (third < n && inLine(p[0], p[1], p[third])) {
      third++;
    }
    if (third >= n) {
      throw new IllegalArgumentException(n + " places, all in line");
    }
    List<int[]> list = new ArrayList<>();
    int[] first =
        area(p[0], p[1], p[third]) > 0 ? new int[] {0, 1, third} : new int[] {1, 0, third};
    list.add(first);
    for (int k = 0; k < 3; k++) {
      list.add(new int[] {first[(k + 1) % 3], first[k], n});
    }
    for (int i = 2; i < n; i++) {
      if (i != third) {
        insert(p, list, i);
      }
    }
    list.removeIf(t -> t[0] == n || t[1] == n || t[2] == n);
    settleTies(p, list);
    return new Triangles(p, list);
  }

  /**
   * Takes a place in. Beyond each edge of the hull lies a triangle whose third corner, the index
   * past all places, is at infinity: its circle is the half plane outside.
   */
  private static void insert(double[][] p, List<int[]> list, int place) {
    List<int[]> open = new ArrayList<>();
    for (int[] t : list) {
      if (holds(p, t, place)) {
        open.add(t);
      }
    }
    list.removeAll(open);
    for (int[] edge : border(open)) {
      list.add(new int[] {edge[0], edge[1], place});
    }
  }

  private static boolean holds(double[][] p, int[] t, int place) {
    for (int k = 0; k < 3; k++) {
      if (t[k] == p.length) {
        double[] a = p[t[(k + 1) % 3]];
        double[] b = p[t[(k + 2) % 3]];
        double[] c = p[place];
        return inLine(a, b, c)
            ? (c[0] - a[0]) * (c[0] - b[0]) + (c[1] - a[1]) * (c[1] - b[1]) < 0
            : area(a, b, c) > 0;
      }
    }
    return inCircle(p, t, place) > ON_CIRCLE;
  }

  private static boolean inLine(double[] a, double[] b, double[] c) {
    double ab = Math.hypot(b[0] - a[0], b[1] - a[1]);
    double ac = Math.hypot(c[0] - a[0], c[1] - a[1]);
    return Math.abs(area(a, b, c)) <= ON_EDGE * ab * Math.max(ab, ac);
  }

  /** Edges of triangles (counterclockwise) that have no partner. */
  private static List<int[]> border(List<int[]> triangles) {
    List<int[]> edges = new ArrayList<>();
    for (int[] t : triangles) {
      for (int k = 0; k < 3; k++) {
        int from = t[k];
        int to = t[(k + 1) % 3];
        if (!edges.removeIf(e -> e[0] == to && e[1] == from)) {
          edges.add(new int[] {from, to});
        }
      }
    }
    return edges;
  }

  /** Flips diagonals of four places on one circle until each goes out from the first of them. */
  private static void settleTies(double[][] p, List<int[]> list) {
    boolean again = true;
    for (int turn = 0; again && turn < list.size() * list.size() + 1; turn++) {
      again = false;
      for (int a = 0; a < list.size() && !again; a++) {
        for (int b = a + 1; b < list.size() && !again; b++) {
          again = flip(p, list, a, b);
        }
      }
    }
  }

  private static boolean flip(double[][] p, List<int[]> list, int a, int b) {
    for (int k = 0; k < 3; k++) {
      int from = list.get(a)[k];
      int to = list.get(a)[(k + 1) % 3];
      int left = list.get(a)[(k + 2) % 3];
      int right = opposite(list.get(b), to, from);
      // Places are sorted, so the least index is the leftmost, of those the lowest.
      if (right >= 0
          && Math.min(left, right) < Math.min(from, to)
          && Math.abs(inCircle(p, list.get(a), right)) <= ON_CIRCLE
          && area(p[left], p[from], p[right]) > 0
          && area(p[right], p[to], p[left]) > 0) {
        list.set(a, new int[] {left, from, right});
        list.set(b, new int[] {right, to, left});
        return true;
      }
    }
    return false;
  }

  /** Third corner of a triangle that has the edge, or -1. */
  private static int opposite(int[] t, int from, int to) {
    for (int k = 0; k < 3; k++) {
      if (t[k] == from && t[(k + 1) % 3] == to) {
        return t[(k + 2) % 3];
      }
    }
    return -1;
  }

  /** Twice the area, positive counterclockwise. */
  private static double area(double[] a, double[] b, double[] c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  }

  /** How far a place lies inside a triangle's circle, as a share of its radius' square. */
  private static double inCircle(double[][] p, int[] t, int place) {
    double ax = p[t[0]][0];
    double ay = p[t[0]][1];
    double bx = p[t[1]][0] - ax;
    double by = p[t[1]][1] - ay;
    double cx = p[t[2]][0] - ax;
    double cy = p[t[2]][1] - ay;
    double d = 2 * (bx * cy - by * cx);
    double ux = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / d;
    double uy = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / d;
    double dx = p[place][0] - ax - ux;
    double dy = p[place][1] - ay - uy;
    double square = ux * ux + uy * uy;
    return (square - dx * dx - dy * dy) / square;
  }

  /** Height at a place; outside the hull that of the hull's nearest place. */
  double heightMm(double x, double y) {
    int hint = last;
    double[] w = weights(triangles[hint], x, y);
    for (int i = 0; i < triangles.length && w == null; i++) {
      w = weights(triangles[i], x, y);
      hint = i;
    }
    if (w == null) {
      return beyond(x, y);
    }
    last = hint; // a hint only: the same height whichever triangle is tried first
    int[] t = triangles[hint];
    return w[0] * places[t[0]][2] + w[1] * places[t[1]][2] + w[2] * places[t[2]][2];
  }

  /** Shares of the corners at a place, or null outside. */
  private double[] weights(int[] t, double x, double y) {
    double[] a = places[t[0]];
    double[] b = places[t[1]];
    double[] c = places[t[2]];
    double whole = area(a, b, c);
    double[] at = {x, y};
    double wa = area(at, b, c) / whole;
    double wb = area(a, at, c) / whole;
    double wc = 1 - wa - wb;
    return wa >= -ON_EDGE && wb >= -ON_EDGE && wc >= -ON_EDGE ? new double[] {wa, wb, wc} : null;
  }

  private double beyond(double x, double y) {
    double nearest = Double.POSITIVE_INFINITY;
    double height = 0;
    for (int[] edge : hull) {
      double[] a = places[edge[0]];
      double[] b = places[edge[1]];
      double dx = b[0] - a[0];
      double dy = b[1] - a[1];
      double t = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy);
      t = Math.max(0, Math.min(1, t));
      double away = Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
      if (away < nearest) {
        nearest = away;
        height = a[2] + t * (b[2] - a[2]);
      }
    }
    return height;
  }
}
