package plyscape.planar;

import java.util.function.IntPredicate;

/**
 * Points of the plane in square buckets, for asking what lies in a small box. Points can be taken
 * out. Built in n steps for n points; a question takes as many as there are points near the box,
 * plus its area in buckets.
 */
final class VertexBuckets {

  /**
   * Points in a bucket, about, if they were spread evenly; lines are not, so real buckets hold a
   * few more.
   */
  private static final int POINTS_PER_BUCKET = 2;

  private final int minX;
  private final int minY;
  private final int size;
  private final int columns;
  private final int rows;
  private final int[] head;
  private final int[] follow;
  private final int[] x;
  private final int[] y;

  VertexBuckets(int[] x, int[] y) {
    this.x = x;
    this.y = y;
    int lowX = Integer.MAX_VALUE;
    int lowY = Integer.MAX_VALUE;
    int highX = Integer.MIN_VALUE;
    int highY = Integer.MIN_VALUE;
    for (int i = 0; i < x.length; i++) {
      lowX = Math.min(lowX, x[i]);
      highX = Math.max(highX, x[i]);
      lowY = Math.min(lowY, y[i]);
      highY = Math.max(highY, y[i]);
    }
    minX = lowX;
    minY = lowY;
    double area = ((double) highX - lowX + 1) * ((double) highY - lowY + 1);
    double wanted = Math.max(1, x.length / (double) POINTS_PER_BUCKET);
    size =
        (int)
            Math.max(
                1,
                Math.ceil(
                    Math.max(
                        Math.sqrt(area / wanted), (highX - lowX + highY - lowY + 2) / wanted / 2)));
    columns = (highX - lowX) / size + 1;
    rows = (highY - lowY) / size + 1;
    head = new int[Math.multiplyExact(columns, rows)];
    java.util.Arrays.fill(head, -1);
    follow = new int[x.length];
    for (int i = 0; i < x.length; i++) {
      int bucket = bucket(i);
      follow[i] = head[bucket];
      head[bucket] = i;
    }
  }

  void remove(int point) {
    int bucket = bucket(point);
    if (head[bucket] == point) {
      head[bucket] = follow[point];
      return;
    }
    int before = head[bucket];
    while (follow[before] != point) {
      before = follow[before];
    }
    follow[before] = follow[point];
  }

  /** Whether no point left of those in the box fulfils the test. */
  boolean none(int lowX, int lowY, int highX, int highY, IntPredicate test) {
    int c1 = Math.min((highX - minX) / size, columns - 1);
    int r1 = Math.min((highY - minY) / size, rows - 1);
    for (int r = Math.max(0, (lowY - minY) / size); r <= r1; r++) {
      for (int c = Math.max(0, (lowX - minX) / size); c <= c1; c++) {
        for (int i = head[r * columns + c]; i >= 0; i = follow[i]) {
          if (x[i] >= lowX && x[i] <= highX && y[i] >= lowY && y[i] <= highY && test.test(i)) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private int bucket(int i) {
    return (y[i] - minY) / size * columns + (x[i] - minX) / size;
  }
}
