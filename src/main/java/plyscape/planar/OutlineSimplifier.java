package plyscape.planar;

/**
 * Leaves out vertices of polylines where every vertex left out stays within a tolerance of the line
 * that replaces it, and no line comes to cross or touch another: a vertex goes only if no other
 * vertex lies in the closed triangle that it makes with its neighbours. The idea of the triangle is
 * Visvalingam and Whyatt's (1993); the order here is by rounds of rising tolerance, which needs no
 * heap and spreads what is left out evenly. Ends of polylines stay. Lines that met in common
 * vertices before still do, and don't meet anywhere else. Takes five rounds over all points; each
 * tests anew all that its line has left out so far, so a long straight line of n points takes n^2.
 */
public final class OutlineSimplifier {

  /** Shares of the tolerance, round by round: what deviates least goes first. */
  private static final double[] ROUNDS = {0, 0.1, 0.35, 1, 1};

  private final int[] x;
  private final int[] y;
  private final int[] firstOf;
  private final double[] tolerance;
  private final int[] prev;
  private final int[] next;
  private final boolean[] gone;
  private VertexBuckets buckets;

  /**
   * Takes polylines laid end to end.
   *
   * @param x all points, grid units
   * @param firstOf index of each polyline's first point, and one past the last at the end
   * @param tolerance of each polyline, grid units; negative for leave as it is, 0 for only points
   *     exactly on the line
   */
  OutlineSimplifier(int[] x, int[] y, int[] firstOf, double[] tolerance) {
    this.x = x;
    this.y = y;
    this.firstOf = firstOf;
    this.tolerance = tolerance;
    prev = new int[x.length];
    next = new int[x.length];
    gone = new boolean[x.length];
    for (int k = 0; k + 1 < firstOf.length; k++) {
      for (int i = firstOf[k]; i < firstOf[k + 1]; i++) {
        prev[i] = i == firstOf[k] ? -1 : i - 1;
        next[i] = i + 1 == firstOf[k + 1] ? -1 : i + 1;
      }
    }
  }

  /** Which points may be left out. */
  boolean[] gone() {
    if (x.length == 0) {
      return gone;
    }
    buckets = new VertexBuckets(x, y);
    int[] left = new int[firstOf.length - 1];
    for (int k = 0; k < left.length; k++) {
      left[k] = firstOf[k + 1] - firstOf[k];
    }
    LongIds straight = straightEnds(left);
    for (double share : ROUNDS) {
      for (int k = 0; k < left.length; k++) {
        left[k] -= sweep(k, share * tolerance[k], left[k], straight);
      }
    }
    return gone;
  }

  /** End pairs of polylines that are one segment: no second line may become the same segment. */
  private LongIds straightEnds(int[] left) {
    LongIds out = new LongIds(left.length);
    for (int k = 0; k < left.length; k++) {
      if (left[k] == 2) {
        out.id(ends(k));
      }
    }
    return out;
  }

  private long ends(int k) {
    long a = LongIds.pair(x[firstOf[k]], y[firstOf[k]]);
    long b = LongIds.pair(x[firstOf[k + 1] - 1], y[firstOf[k + 1] - 1]);
    return Math.min(a, b) * 0x9E3779B97F4A7C15L + Math.max(a, b);
  }

  private int sweep(int k, double tol, int points, LongIds straight) {
    int first = firstOf[k];
    int last = firstOf[k + 1] - 1;
    boolean closed = x[first] == x[last] && y[first] == y[last];
    int fewest = closed ? 4 : 2;
    int removed = 0;
    for (int b = next[first];
        tolerance[k] >= 0 && b >= 0 && next[b] >= 0 && points - removed > fewest; ) {
      int a = prev[b];
      int c = next[b];
      boolean becomesSegment = points - removed == 3;
      if (within(a, c, tol)
          && !(becomesSegment && straight.idOrNone(ends(k)) >= 0)
          && triangleEmpty(a, b, c)) {
        gone[b] = true;
        buckets.remove(b);
        next[a] = c;
        prev[c] = a;
        removed++;
        if (becomesSegment) {
          straight.id(ends(k));
        }
        b = next[c] >= 0 && tol > 0 ? next[c] : c;
      } else {
        b = c;
      }
    }
    return removed;
  }

  /**
   * Whether all points from a to c that were there at first lie within the tolerance of the segment
   * between them.
   */
  private boolean within(int a, int c, double tol) {
    double dx = (double) x[c] - x[a];
    double dy = (double) y[c] - y[a];
    double length2 = dx * dx + dy * dy;
    if (length2 == 0) {
      return false;
    }
    double bound = tol * tol * length2;
    double tolerance2 = tol * tol;
    for (int i = a + 1; i < c; i++) {
      double px = (double) x[i] - x[a];
      double py = (double) y[i] - y[a];
      double along = px * dx + py * dy;
      if (along < 0) {
        if (px * px + py * py > tolerance2) {
          return false;
        }
      } else if (along > length2) {
        double qx = px - dx;
        double qy = py - dy;
        if (qx * qx + qy * qy > tolerance2) {
          return false;
        }
      } else {
        double cross = dx * py - dy * px;
        if (cross * cross > bound) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean triangleEmpty(int a, int b, int c) {
    int ax = x[a];
    int ay = y[a];
    int bx = x[b];
    int by = y[b];
    int cx = x[c];
    int cy = y[c];
    int sign = GridUnits.turn(ax, ay, bx, by, cx, cy) < 0 ? -1 : 1;
    return buckets.none(
        Math.min(ax, Math.min(bx, cx)),
        Math.min(ay, Math.min(by, cy)),
        Math.max(ax, Math.max(bx, cx)),
        Math.max(ay, Math.max(by, cy)),
        i -> {
          int px = x[i];
          int py = y[i];
          if (i == b || px == ax && py == ay || px == cx && py == cy) {
            return false;
          }
          return sign * GridUnits.turn(ax, ay, bx, by, px, py) >= 0
              && sign * GridUnits.turn(bx, by, cx, cy, px, py) >= 0
              && sign * GridUnits.turn(cx, cy, ax, ay, px, py) >= 0;
        });
  }

  /**
   * Simplifies all outlines of a layer; those along the box lose only points that lie exactly on
   * the line.
   *
   * @param restoreAreas whether vertices that stay may move, within the tolerance, so that areas
   *     stay
   */
  public static OutlineLayer layer(
      OutlineLayer layer, double toleranceUnits, boolean restoreAreas) {
    return layer(layer, toleranceUnits, 0, restoreAreas);
  }

  /**
   * The same with a tolerance for outlines along the box, or otherwise settled, as well: a grid
   * step takes out what nodings alone have put in.
   */
  public static OutlineLayer layer(
      OutlineLayer layer, double toleranceUnits, double settledUnits, boolean restoreAreas) {
    int n = layer.points();
    int[] x = new int[n];
    int[] y = new int[n];
    int[] firstOf = new int[layer.outlines().size() + 1];
    double[] tolerance = new double[layer.outlines().size()];
    int at = 0;
    for (int k = 0; k < tolerance.length; k++) {
      OutlineLayer.Outline outline = layer.outlines().get(k);
      System.arraycopy(outline.x(), 0, x, at, outline.x().length);
      System.arraycopy(outline.y(), 0, y, at, outline.y().length);
      at += outline.x().length;
      firstOf[k + 1] = at;
      tolerance[k] = outline.onBox() ? settledUnits : toleranceUnits;
    }
    boolean[] gone = new OutlineSimplifier(x, y, firstOf, tolerance).gone();
    OutlineLayer out =
        restoreAreas ? new AreaRestorer(x, y, firstOf, gone, layer).restored() : new OutlineLayer();
    int[] keptX = new int[n];
    int[] keptY = new int[n];
    for (int k = 0; k < tolerance.length && !restoreAreas; k++) {
      int used = 0;
      for (int i = firstOf[k]; i < firstOf[k + 1]; i++) {
        if (!gone[i]) {
          keptX[used] = x[i];
          keptY[used++] = y[i];
        }
      }
      out.add(keptX, keptY, used, layer.outlines().get(k).onBox());
    }
    return out;
  }
}
