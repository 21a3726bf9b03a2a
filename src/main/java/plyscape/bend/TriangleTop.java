package plyscape.bend;

import java.util.ArrayList;
import java.util.List;

/**
 * Heights at scattered places, linear over their {@link Delaunay} triangles; outside their hull the
 * height of the nearest place on it. Immutable.
 */
final class TriangleTop implements TopFace {

  /** Barycentric weights may be below 0 by this much for places on an edge. */
  private static final double EDGE = 1e-9;

  private final double[] x;
  private final double[] y;
  private final double[] z;
  private final List<int[]> triangles;
  private final List<Integer> hull;
  private final double minX;
  private final double minY;
  private final double cell;
  private final int columns;
  private final int rows;
  private final List<List<Integer>> buckets = new ArrayList<>();

  /**
   * A face.
   *
   * @param readings three or more, no two at one place, not all in line
   */
  TriangleTop(List<TopReading> readings) {
    x = readings.stream().mapToDouble(TopReading::x).toArray();
    y = readings.stream().mapToDouble(TopReading::y).toArray();
    z = readings.stream().mapToDouble(TopReading::z).toArray();
    Delaunay delaunay = new Delaunay(x, y);
    triangles = delaunay.triangles();
    hull = delaunay.hull();
    minX = java.util.Arrays.stream(x).min().orElseThrow();
    minY = java.util.Arrays.stream(y).min().orElseThrow();
    double width = java.util.Arrays.stream(x).max().orElseThrow() - minX;
    double height = java.util.Arrays.stream(y).max().orElseThrow() - minY;
    cell = Math.max(Math.max(width, height) / (1 + Math.sqrt(triangles.size())), 1e-6);
    columns = 1 + (int) (width / cell);
    rows = 1 + (int) (height / cell);
    for (int i = 0; i < columns * rows; i++) {
      buckets.add(new ArrayList<>());
    }
    for (int t = 0; t < triangles.size(); t++) {
      put(t);
    }
  }

  @Override
  public double heightMm(double px, double py) {
    int t = triangle(px, py);
    if (t >= 0) {
      return inside(t, px, py);
    }
    HullPlace near = nearest(px, py);
    return near.height();
  }

  @Override
  public int piece(double px, double py) {
    int t = triangle(px, py);
    return t >= 0 ? t : triangles.size() + nearest(px, py).piece();
  }

  /** Whether a place lies in the hull of the readings or on its edge. */
  boolean holds(double px, double py) {
    return triangle(px, py) >= 0;
  }

  private double inside(int t, double px, double py) {
    int[] c = triangles.get(t);
    double wb = weight(c[2], c[0], px, py) / weight(c[2], c[0], x[c[1]], y[c[1]]);
    double wc = weight(c[0], c[1], px, py) / weight(c[0], c[1], x[c[2]], y[c[2]]);
    return z[c[0]] + wb * (z[c[1]] - z[c[0]]) + wc * (z[c[2]] - z[c[0]]);
  }

  /** The triangle that holds a place, or -1. */
  private int triangle(double px, double py) {
    int column = (int) Math.floor((px - minX) / cell);
    int row = (int) Math.floor((py - minY) / cell);
    column = column == columns ? column - 1 : column;
    row = row == rows ? row - 1 : row;
    if (column < 0 || row < 0 || column >= columns || row >= rows) {
      return -1;
    }
    for (int t : buckets.get(row * columns + column)) {
      int[] c = triangles.get(t);
      double area = weight(c[0], c[1], x[c[2]], y[c[2]]);
      if (weight(c[0], c[1], px, py) >= -EDGE * area
          && weight(c[1], c[2], px, py) >= -EDGE * area
          && weight(c[2], c[0], px, py) >= -EDGE * area) {
        return t;
      }
    }
    return -1;
  }

  private double weight(int a, int b, double px, double py) {
    return (x[b] - x[a]) * (py - y[a]) - (y[b] - y[a]) * (px - x[a]);
  }

  private void put(int t) {
    int[] c = triangles.get(t);
    double lowX = Math.min(x[c[0]], Math.min(x[c[1]], x[c[2]]));
    double highX = Math.max(x[c[0]], Math.max(x[c[1]], x[c[2]]));
    double lowY = Math.min(y[c[0]], Math.min(y[c[1]], y[c[2]]));
    double highY = Math.max(y[c[0]], Math.max(y[c[1]], y[c[2]]));
    int toRow = Math.min(rows - 1, (int) ((highY - minY) / cell + EDGE));
    int toColumn = Math.min(columns - 1, (int) ((highX - minX) / cell + EDGE));
    for (int r = Math.max(0, (int) ((lowY - minY) / cell - EDGE)); r <= toRow; r++) {
      for (int k = Math.max(0, (int) ((lowX - minX) / cell - EDGE)); k <= toColumn; k++) {
        buckets.get(r * columns + k).add(t);
      }
    }
  }

  /** Height at the nearest place of the hull, and a number for the edge or corner it lies on. */
  private record HullPlace(double height, int piece) {}

  private HullPlace nearest(double px, double py) {
    double best = Double.POSITIVE_INFINITY;
    double height = 0;
    int piece = 0;
    for (int i = 0; i < hull.size(); i++) {
      int a = hull.get(i);
      int b = hull.get((i + 1) % hull.size());
      double dx = x[b] - x[a];
      double dy = y[b] - y[a];
      double along = ((px - x[a]) * dx + (py - y[a]) * dy) / (dx * dx + dy * dy);
      double t = Math.min(1, Math.max(0, along));
      double off = Math.hypot(px - x[a] - t * dx, py - y[a] - t * dy);
      if (off < best) {
        best = off;
        height = z[a] + t * (z[b] - z[a]);
        int corner = 2 * (t == 0 ? i : (i + 1) % hull.size());
        piece = t > 0 && t < 1 ? 2 * i + 1 : corner;
      }
    }
    return new HullPlace(height, piece);
  }
}
