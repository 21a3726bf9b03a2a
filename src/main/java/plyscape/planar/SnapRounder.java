package plyscape.planar;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Nodes segments together on the integer grid by snap rounding (Hobby, "Practical segment
 * intersection with finite precision output", 1999; Guibas and Marimont, "Rounding arrangements
 * dynamically", 1998): the {@linkplain HotSquare unit squares} around ends and crossings are hot,
 * and every segment is led through the middle of each hot square that it meets. Afterwards segments
 * meet only in grid points, nothing has moved by more than half a square's diagonal, and nothing
 * has been turned over. All tests are exact. Why not a library's noder: with whole coordinates this
 * needs no objects and is some ten times as fast, and contours of rough ground come in hundreds of
 * thousands of segments.
 *
 * <p>For n segments that cross k times it takes about n + k steps where lines are spread evenly, as
 * buckets hold a few segments each; n^2 where all of them pass one bucket.
 */
final class SnapRounder {

  /** Segments or buckets that one task looks at. */
  private static final int STRETCH = 4096;

  /** No grid point that segments have. */
  private static final long NONE = Long.MIN_VALUE;

  private final int[] x0;
  private final int[] y0;
  private final int[] x1;
  private final int[] y1;
  private final int n;
  private final LongIds pixels;

  /** Takes segments by their ends; none of them may be a point. */
  SnapRounder(int[] x0, int[] y0, int[] x1, int[] y1, int n) {
    this.x0 = x0;
    this.y0 = y0;
    this.x1 = x1;
    this.y1 = y1;
    this.n = n;
    pixels = new LongIds(n + n / 4);
  }

  /**
   * What {@link #run} calls for each piece of a segment, in the segment's direction; vertices are
   * numbers of {@link #vertices}.
   */
  interface Pieces {
    void piece(int segment, int from, int to);
  }

  /** Grid points in use. */
  LongIds vertices() {
    return pixels;
  }

  void run(Pieces pieces) {
    if (n == 0) {
      return;
    }
    int minX = Integer.MAX_VALUE;
    int minY = Integer.MAX_VALUE;
    int maxX = Integer.MIN_VALUE;
    int maxY = Integer.MIN_VALUE;
    for (int i = 0; i < n; i++) {
      minX = Math.min(minX, Math.min(x0[i], x1[i]));
      maxX = Math.max(maxX, Math.max(x0[i], x1[i]));
      minY = Math.min(minY, Math.min(y0[i], y1[i]));
      maxY = Math.max(maxY, Math.max(y0[i], y1[i]));
      pixels.id(LongIds.pair(x0[i], y0[i]));
      pixels.id(LongIds.pair(x1[i], y1[i]));
    }
    SegmentBuckets buckets = new SegmentBuckets(minX, minY, maxX, maxY, n);
    buckets.fill(n, (i, visitor) -> buckets.visit(x0[i], y0[i], x1[i], y1[i], visitor));
    crossings(buckets);
    SegmentBuckets hot = new SegmentBuckets(minX, minY, maxX, maxY, pixels.size());
    hot.fill(
        pixels.size(), (i, visitor) -> visitor.visit(hot.bucketOf(pixels.high(i), pixels.low(i))));
    List<int[]> trails =
        IntStream.range(0, stretches(n))
            .parallel()
            .mapToObj(
                stretch -> trails(stretch * STRETCH, Math.min(n, (stretch + 1) * STRETCH), hot))
            .toList();
    int segment = 0;
    for (int[] trail : trails) {
      for (int at = 0; at < trail.length; at += trail[at] + 1, segment++) {
        for (int k = 2; k <= trail[at]; k++) {
          pieces.piece(segment, trail[at + k - 1], trail[at + k]);
        }
      }
    }
  }

  private static int stretches(int count) {
    return (count + STRETCH - 1) / STRETCH;
  }

  /** Of some segments each the count of hot squares that it meets, and these. */
  private int[] trails(int from, int to, SegmentBuckets hot) {
    Trail trail = new Trail();
    int[] out = new int[4 * STRETCH];
    int used = 0;
    for (int i = from; i < to; i++) {
      trail.of(i, hot);
      if (used + trail.size >= out.length) {
        out = Arrays.copyOf(out, 2 * (used + trail.size));
      }
      out[used++] = trail.size;
      System.arraycopy(trail.at, 0, out, used, trail.size);
      used += trail.size;
    }
    return Arrays.copyOf(out, used);
  }

  /** Crossings are found side by side and numbered in the order of the buckets. */
  private void crossings(SegmentBuckets buckets) {
    IntStream.range(0, stretches(buckets.count()))
        .parallel()
        .mapToObj(
            stretch ->
                crossings(
                    buckets, stretch * STRETCH, Math.min(buckets.count(), (stretch + 1) * STRETCH)))
        .toList()
        .forEach(found -> Arrays.stream(found).forEach(pixels::id));
  }

  private long[] crossings(SegmentBuckets buckets, int from, int to) {
    long[] found = new long[64];
    int used = 0;
    for (int b = from; b < to; b++) {
      for (int p = buckets.from(b); p < buckets.to(b); p++) {
        int i = buckets.item(p);
        for (int q = p + 1; q < buckets.to(b); q++) {
          long pixel = crossing(i, buckets.item(q));
          if (pixel != NONE) {
            if (used == found.length) {
              found = Arrays.copyOf(found, 2 * used);
            }
            found[used++] = pixel;
          }
        }
      }
    }
    return Arrays.copyOf(found, used);
  }

  /** The grid point nearest to where two segments cross, or NONE if they don't cross inside. */
  private long crossing(int i, int k) {
    if (Math.max(x0[i], x1[i]) < Math.min(x0[k], x1[k])
        || Math.max(x0[k], x1[k]) < Math.min(x0[i], x1[i])
        || Math.max(y0[i], y1[i]) < Math.min(y0[k], y1[k])
        || Math.max(y0[k], y1[k]) < Math.min(y0[i], y1[i])) {
      return NONE;
    }
    long a = GridUnits.turn(x0[k], y0[k], x1[k], y1[k], x0[i], y0[i]);
    long b = GridUnits.turn(x0[k], y0[k], x1[k], y1[k], x1[i], y1[i]);
    if (a == 0 || b == 0 || a > 0 == b > 0) {
      return NONE;
    }
    long c = GridUnits.turn(x0[i], y0[i], x1[i], y1[i], x0[k], y0[k]);
    long d = GridUnits.turn(x0[i], y0[i], x1[i], y1[i], x1[k], y1[k]);
    if (c == 0 || d == 0 || c > 0 == d > 0) {
      return NONE;
    }
    // The crossing divides segment i in the ratio of the distances of its ends from segment k.
    int px = x0[i] + HotSquare.rounded((long) x1[i] - x0[i], a, a - b);
    int py = y0[i] + HotSquare.rounded((long) y1[i] - y0[i], a, a - b);
    return LongIds.pair(px, py);
  }

  /** The hot squares that one segment meets, in its direction. */
  private final class Trail {

    int[] at = new int[16];
    long[] along = new long[16];
    int size;

    void of(int segment, SegmentBuckets hot) {
      size = 0;
      hot.visit(
          x0[segment],
          y0[segment],
          x1[segment],
          y1[segment],
          bucket -> {
            for (int p = hot.from(bucket); p < hot.to(bucket); p++) {
              int pixel = hot.item(p);
              if (HotSquare.meets(
                  pixels.high(pixel),
                  pixels.low(pixel),
                  x0[segment],
                  y0[segment],
                  x1[segment],
                  y1[segment])) {
                insert(segment, pixel);
              }
            }
          });
    }

    private void insert(int segment, int pixel) {
      if (size == at.length) {
        at = Arrays.copyOf(at, size * 2);
        along = Arrays.copyOf(along, size * 2);
      }
      long place =
          ((long) pixels.high(pixel) - x0[segment]) * ((long) x1[segment] - x0[segment])
              + ((long) pixels.low(pixel) - y0[segment]) * ((long) y1[segment] - y0[segment]);
      int k = size++;
      while (k > 0 && along[k - 1] > place) {
        along[k] = along[k - 1];
        at[k] = at[k - 1];
        k--;
      }
      along[k] = place;
      at[k] = pixel;
    }
  }
}
