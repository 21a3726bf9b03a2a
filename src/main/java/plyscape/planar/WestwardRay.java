package plyscape.planar;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Finds what lies next to the west of a point, among chains sorted into horizontal strips. Built in
 * n log n steps for n segments; a question looks at the segments of one strip that begin west of
 * the point, until the next could not be nearer: a 2048th of all at most where they are spread
 * evenly.
 */
final class WestwardRay {

  private static final int STRIPS = 2048;

  private final List<Chain> chains;
  private int minY = Integer.MAX_VALUE;
  private final int height;
  private final int[] first;
  private final int[] chainOf;
  private final int[] segmentOf;

  /**
   * Western end of each segment; in each strip they rise, so that a search can begin at the point
   * and go west.
   */
  private final int[] west;

  /** Of each strip the width of its widest segment. */
  private final int[] widest;

  WestwardRay(List<Chain> chains) {
    this.chains = chains;
    int maxY = Integer.MIN_VALUE;
    for (Chain chain : chains) {
      for (int y : chain.y) {
        minY = Math.min(minY, y);
        maxY = Math.max(maxY, y);
      }
    }
    height = Math.max(1, (maxY - minY) / STRIPS + 1);
    int strips = (maxY - minY) / height + 1;
    first = new int[strips + 1];
    visit((strip, c, i) -> first[strip + 1]++);
    for (int s = 0; s < strips; s++) {
      first[s + 1] += first[s];
    }
    chainOf = new int[first[strips]];
    segmentOf = new int[first[strips]];
    int[] fill = Arrays.copyOf(first, strips + 1);
    visit(
        (strip, c, i) -> {
          chainOf[fill[strip]] = c;
          segmentOf[fill[strip]++] = i;
        });
    west = new int[chainOf.length];
    widest = new int[strips];
    IntStream.range(0, strips).parallel().forEach(this::sort);
  }

  private void sort(int strip) {
    int from = first[strip];
    int count = first[strip + 1] - from;
    long[] keys = new long[count];
    for (int k = 0; k < count; k++) {
      int[] x = chains.get(chainOf[from + k]).x;
      int i = segmentOf[from + k];
      keys[k] = (long) Math.min(x[i], x[i + 1]) << 32 | k;
      widest[strip] = Math.max(widest[strip], Math.abs(x[i] - x[i + 1]));
    }
    Arrays.sort(keys);
    int[] chain = Arrays.copyOfRange(chainOf, from, from + count);
    int[] segment = Arrays.copyOfRange(segmentOf, from, from + count);
    for (int k = 0; k < count; k++) {
      west[from + k] = (int) (keys[k] >> 32);
      chainOf[from + k] = chain[(int) keys[k]];
      segmentOf[from + k] = segment[(int) keys[k]];
    }
  }

  /** The end of those of a strip's segments that don't begin east of a point. */
  private int behind(int strip, int px) {
    int low = first[strip];
    int high = first[strip + 1];
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (west[middle] <= px) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private interface Visitor {
    void visit(int strip, int chain, int segment);
  }

  private void visit(Visitor visitor) {
    for (int c = 0; c < chains.size(); c++) {
      int[] y = chains.get(c).y;
      for (int i = 0; i + 1 < y.length; i++) {
        if (y[i] != y[i + 1]) {
          int to = (Math.max(y[i], y[i + 1]) - minY) / height;
          for (int s = (Math.min(y[i], y[i + 1]) - minY) / height; s <= to; s++) {
            visitor.visit(s, c, i);
          }
        }
      }
    }
  }

  /**
   * The half-edge that faces the point from the west, an infinitesimal step above its own height so
   * that the ray meets no vertex; chains of the point's own part are not looked at. -1 when there
   * is none.
   */
  int hit(int px, int py, int[] partOfChain, int part) {
    int strip = (py - minY) / height;
    int best = -1;
    for (int k = behind(strip, px) - 1; k >= first[strip]; k--) {
      if (best >= 0 && (long) west[k] + widest[strip] < west[best]) {
        break;
      }
      Chain chain = chains.get(chainOf[k]);
      int i = segmentOf[k];
      boolean low0 = chain.y[i] <= py;
      boolean low1 = chain.y[i + 1] <= py;
      if (low0 == low1 || partOfChain[chainOf[k]] == part) {
        continue;
      }
      if (side(chain, i, px, py) > 0 && (best < 0 || eastOf(k, best, py))) {
        best = k;
      }
    }
    if (best < 0) {
      return -1;
    }
    Chain chain = chains.get(chainOf[best]);
    // East is to the right of an upward segment.
    boolean up = chain.y[segmentOf[best]] < chain.y[segmentOf[best] + 1];
    return 2 * chainOf[best] + (up ? 1 : 0);
  }

  /** Positive when the point lies east of the segment. */
  private static long side(Chain chain, int i, int px, int py) {
    long turn = GridUnits.turn(chain.x[i], chain.y[i], chain.x[i + 1], chain.y[i + 1], px, py);
    return chain.y[i] < chain.y[i + 1] ? -turn : turn;
  }

  /**
   * Whether segment a crosses the ray east of segment b; of two that meet on it, the one that leans
   * east.
   */
  private boolean eastOf(int a, int b, int py) {
    long ax0 = lowX(a);
    long adx = run(a);
    long ady = rise(a);
    long bx0 = lowX(b);
    long bdx = run(b);
    long bdy = rise(b);
    double apart =
        ax0 + (double) (py - lowY(a)) * adx / ady - (bx0 + (double) (py - lowY(b)) * bdx / bdy);
    if (Math.abs(apart) > 1e-3) {
      return apart > 0;
    }
    // x = x0 + (py - y0) dx / dy, both brought to the denominator ady * bdy.
    BigInteger exact =
        BigInteger.valueOf(ax0 * ady + (py - lowY(a)) * adx)
            .multiply(BigInteger.valueOf(bdy))
            .subtract(
                BigInteger.valueOf(bx0 * bdy + (py - lowY(b)) * bdx)
                    .multiply(BigInteger.valueOf(ady)));
    int sign = exact.signum();
    return sign > 0 || sign == 0 && adx * bdy > bdx * ady;
  }

  private int low(int k) {
    Chain chain = chains.get(chainOf[k]);
    int i = segmentOf[k];
    return chain.y[i] < chain.y[i + 1] ? i : i + 1;
  }

  private long lowX(int k) {
    return chains.get(chainOf[k]).x[low(k)];
  }

  private long lowY(int k) {
    return chains.get(chainOf[k]).y[low(k)];
  }

  private long run(int k) {
    Chain chain = chains.get(chainOf[k]);
    int i = segmentOf[k];
    int low = low(k);
    return (long) chain.x[low == i ? i + 1 : i] - chain.x[low];
  }

  private long rise(int k) {
    Chain chain = chains.get(chainOf[k]);
    return Math.abs(chain.y[segmentOf[k] + 1] - chain.y[segmentOf[k]]);
  }
}
