package plyscape.planar;

import java.util.Arrays;

/**
 * Square buckets over the plane that know which segments come near them: every bucket that a
 * segment passes, or comes within one grid unit of, lists it. Also used to list points. There is
 * about a bucket for three segments, so that filling takes about n steps for n short segments, and
 * n sqrt(n) for such as cross the whole plane.
 */
final class SegmentBuckets {

  private final long minX;
  private final long minY;
  private final long size;
  private final int columns;
  private final int rows;
  private int[] first;
  private int[] items;

  /** Buckets for about so many segments between the given limits. */
  SegmentBuckets(int minX, int minY, int maxX, int maxY, int expected) {
    this.minX = minX - 2L;
    this.minY = minY - 2L;
    long width = maxX - this.minX + 3;
    long height = maxY - this.minY + 3;
    double wanted = Math.max(1, expected / 3.0);
    size = Math.max(8, (long) Math.ceil(Math.sqrt((double) width * height / wanted)));
    columns = (int) (width / size) + 1;
    rows = (int) (height / size) + 1;
  }

  /** What {@link #visit} calls for each bucket; false ends the walk. */
  interface Visitor {
    void visit(int bucket);
  }

  /** Calls for every bucket near a segment. */
  void visit(int x0, int y0, int x1, int y1, Visitor visitor) {
    // South end first.
    long ax = y0 <= y1 ? x0 : x1;
    long ay = Math.min(y0, y1);
    long bx = y0 <= y1 ? x1 : x0;
    long by = Math.max(y0, y1);
    int r0 = (int) ((ay - 1 - minY) / size);
    int r1 = (int) ((by + 1 - minY) / size);
    for (int r = r0; r <= r1; r++) {
      double from = ax;
      double to = bx;
      if (by > ay) {
        // The stretch of the segment within the row of buckets, two units to spare above and below.
        double low = Math.max(ay, minY + r * size - 2);
        double high = Math.min(by, minY + (r + 1) * size + 2);
        from = ax + (low - ay) * (bx - ax) / (by - ay);
        to = ax + (high - ay) * (bx - ax) / (by - ay);
      }
      int c0 = (int) (((long) Math.floor(Math.min(from, to)) - 2 - minX) / size);
      int c1 = (int) (((long) Math.ceil(Math.max(from, to)) + 2 - minX) / size);
      c0 = Math.max(0, Math.min(c0, columns - 1));
      c1 = Math.max(0, Math.min(c1, columns - 1));
      for (int c = c0; c <= c1; c++) {
        visitor.visit(r * columns + c);
      }
    }
  }

  int bucketOf(int x, int y) {
    return (int) ((y - minY) / size) * columns + (int) ((x - minX) / size);
  }

  int count() {
    return columns * rows;
  }

  /**
   * Lists items by bucket; {@code each} must call the visitor for the same buckets whenever it is
   * asked.
   */
  void fill(int n, Each each) {
    first = new int[count() + 1];
    for (int i = 0; i < n; i++) {
      each.buckets(i, bucket -> first[bucket + 1]++);
    }
    for (int b = 0; b < count(); b++) {
      first[b + 1] += first[b];
    }
    items = new int[first[count()]];
    int[] at = Arrays.copyOf(first, first.length);
    for (int i = 0; i < n; i++) {
      int item = i;
      each.buckets(i, bucket -> items[at[bucket]++] = item);
    }
  }

  /** The buckets of an item. */
  interface Each {
    void buckets(int item, Visitor visitor);
  }

  int from(int bucket) {
    return first[bucket];
  }

  int to(int bucket) {
    return first[bucket + 1];
  }

  int item(int at) {
    return items[at];
  }
}
