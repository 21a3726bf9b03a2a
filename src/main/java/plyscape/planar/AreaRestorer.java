package plyscape.planar;

import java.util.Arrays;

/**
 * Moves the vertices of simplified outlines so that the areas on both sides stay what they were.
 * The chords of a bend all lie on its inner side: without this a round hill shrinks by two thirds
 * of the tolerance all around. A segment should move by the area it cut off over its length, and a
 * vertex moves by the mean of its two segments, so by two thirds of the tolerance at most. Ends
 * stay, and so does a vertex whose move would sweep over another.
 */
final class AreaRestorer {

  private final int[] x;
  private final int[] y;
  private final int[] originalX;
  private final int[] originalY;
  private final int[] firstOf;
  private final OutlineLayer layer;
  private final int[] kept;
  private final VertexBuckets buckets;

  /**
   * No vertex moves farther than this, so buckets made beforehand are searched with this much to
   * spare.
   */
  private int largestShift;

  AreaRestorer(int[] allX, int[] allY, int[] firstOfAll, boolean[] gone, OutlineLayer layer) {
    originalX = allX;
    originalY = allY;
    this.layer = layer;
    firstOf = new int[firstOfAll.length];
    int[] keptIndex = new int[allX.length];
    int n = 0;
    for (int k = 0; k + 1 < firstOfAll.length; k++) {
      for (int i = firstOfAll[k]; i < firstOfAll[k + 1]; i++) {
        if (!gone[i]) {
          keptIndex[n++] = i;
        }
      }
      firstOf[k + 1] = n;
    }
    kept = Arrays.copyOf(keptIndex, n);
    x = new int[n];
    y = new int[n];
    for (int i = 0; i < n; i++) {
      x[i] = allX[kept[i]];
      y[i] = allY[kept[i]];
    }
    buckets = n == 0 ? null : new VertexBuckets(x, y);
  }

  /** The layer's outlines with the vertices that were kept, moved. */
  OutlineLayer restored() {
    OutlineLayer out = new OutlineLayer();
    double[][] shifts = new double[firstOf.length - 1][];
    for (int k = 0; k < shifts.length; k++) {
      if (!layer.outlines().get(k).onBox()) {
        shifts[k] = shifts(firstOf[k], firstOf[k + 1] - 1);
        for (double shift : shifts[k]) {
          largestShift = Math.max(largestShift, (int) Math.ceil(Math.abs(shift)) + 1);
        }
      }
    }
    for (int k = 0; k < shifts.length; k++) {
      int first = firstOf[k];
      int last = firstOf[k + 1] - 1;
      if (shifts[k] != null) {
        for (int b = first + 1; b < last; b++) {
          move(b - 1, b, b + 1, shifts[k][b - first]);
        }
      }
      out.add(
          Arrays.copyOfRange(x, first, last + 1),
          Arrays.copyOfRange(y, first, last + 1),
          last + 1 - first,
          shifts[k] == null);
    }
    return out;
  }

  /** How far each vertex between the ends should go to the right. */
  private double[] shifts(int first, int last) {
    double[] out = new double[last - first + 1];
    double cutBefore = 0;
    double lengthBefore = 0;
    for (int i = first; i < last; i++) {
      double cut = cutOff2(kept[i], kept[i + 1]);
      double length = Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
      out[i - first] = i == first ? 0 : (cutBefore + cut) / 2 / (lengthBefore + length);
      cutBefore = cut;
      lengthBefore = length;
    }
    return out;
  }

  /**
   * Twice the area between the original line from one point to another and the chord, positive to
   * the chord's right.
   */
  private long cutOff2(int from, int to) {
    long sum = 0;
    for (int i = from + 1; i < to; i++) {
      sum +=
          GridUnits.turn(
              originalX[from],
              originalY[from],
              originalX[i],
              originalY[i],
              originalX[i + 1],
              originalY[i + 1]);
    }
    return sum;
  }

  private void move(int a, int b, int c, double shift) {
    double normalX = (double) y[c] - y[a];
    double normalY = (double) x[a] - x[c];
    double norm = Math.hypot(normalX, normalY);
    if (norm == 0) {
      return;
    }
    int px = x[b] + (int) Math.rint(normalX / norm * shift);
    int py = y[b] + (int) Math.rint(normalY / norm * shift);
    if ((px != x[b] || py != y[b]) && sweepsNothing(a, b, px, py) && sweepsNothing(c, b, px, py)) {
      x[b] = px;
      y[b] = py;
    }
  }

  /** Whether the triangle from a neighbour to a vertex and its new place holds no other vertex. */
  private boolean sweepsNothing(int a, int b, int px, int py) {
    int ax = x[a];
    int ay = y[a];
    int bx = x[b];
    int by = y[b];
    int sign = GridUnits.turn(ax, ay, bx, by, px, py) < 0 ? -1 : 1;
    return buckets.none(
        Math.min(ax, Math.min(bx, px)) - largestShift,
        Math.min(ay, Math.min(by, py)) - largestShift,
        Math.max(ax, Math.max(bx, px)) + largestShift,
        Math.max(ay, Math.max(by, py)) + largestShift,
        i ->
            i != b
                && (x[i] != ax || y[i] != ay)
                && sign * GridUnits.turn(ax, ay, bx, by, x[i], y[i]) >= 0
                && sign * GridUnits.turn(bx, by, px, py, x[i], y[i]) >= 0
                && sign * GridUnits.turn(px, py, ax, ay, x[i], y[i]) >= 0);
  }
}
