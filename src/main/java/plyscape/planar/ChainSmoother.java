package plyscape.planar;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes smooth lines of chains that follow the sides of cells: every point goes to the mean of its
 * neighbourhood along the chain (a Gaussian of some 1.7 cells), not farther than a limit, and each
 * chain is then shifted so that the areas on both sides stay what they were. Ends stay, and so does
 * what borders on the outside. Points move one by one, and only where no line comes to touch or
 * cross another: so the map stays a map, and what shared a border still does. Takes some 30 passes
 * over all points, each with a question to {@link VertexBuckets} in the last three.
 */
public final class ChainSmoother {

  /** Rounds of the mean of 1/4, 1/2, 1/4; each adds half a squared step to the variance. */
  private static final int ROUNDS = 24;

  /** Chains of few points would shrink to nothing: a round takes so many. */
  private static final int POINTS_PER_ROUND = 4;

  /** Farthest that a point goes from where it was, in cells, and with the shift for the area. */
  private static final double MOST_CELLS = 0.7;

  private static final double MOST_SHIFTED_CELLS = 0.9;

  /** Passes over all points: what was in the way of some may have gone. */
  private static final int PASSES = 3;

  private final int[] x;
  private final int[] y;
  private final int[] goalX;
  private final int[] goalY;

  /** Neighbours along the chain; -1 at an end. */
  private final int[] before;

  private final int[] after;
  private final int[] firstOf;
  private final double cell;
  private final VertexBuckets buckets;

  private ChainSmoother(List<Chain> chains, int cellUnits) {
    cell = cellUnits;
    firstOf = new int[chains.size() + 1];
    for (int c = 0; c < chains.size(); c++) {
      firstOf[c + 1] = firstOf[c] + refined(chains.get(c).x, chains.get(c).y, null, null, 0);
    }
    int n = firstOf[chains.size()];
    x = new int[n];
    y = new int[n];
    before = new int[n];
    after = new int[n];
    for (int c = 0; c < chains.size(); c++) {
      refined(chains.get(c).x, chains.get(c).y, x, y, firstOf[c]);
      for (int i = firstOf[c]; i < firstOf[c + 1]; i++) {
        before[i] = i == firstOf[c] ? -1 : i - 1;
        after[i] = i + 1 == firstOf[c + 1] ? -1 : i + 1;
      }
    }
    goalX = x.clone();
    goalY = y.clone();
    buckets = new VertexBuckets(x, y);
  }

  /**
   * The chains smoothed, in the same order, with the same ends and sides.
   *
   * @param chains a planar map's, along the sides of square cells
   * @param cellUnits side of a cell, grid units
   */
  public static List<Chain> smooth(List<Chain> chains, int cellUnits) {
    if (chains.isEmpty()) {
      return chains;
    }
    ChainSmoother smoother = new ChainSmoother(chains, cellUnits);
    for (int c = 0; c < chains.size(); c++) {
      if (chains.get(c).left != 0 && chains.get(c).right != 0) {
        smoother.aim(smoother.firstOf[c], smoother.firstOf[c + 1]);
      }
    }
    for (int pass = 0; pass < PASSES; pass++) {
      smoother.move();
    }
    List<Chain> out = new ArrayList<>(chains.size());
    for (int c = 0; c < chains.size(); c++) {
      Chain chain = chains.get(c);
      int from = smoother.firstOf[c];
      int to = smoother.firstOf[c + 1];
      int[] px = java.util.Arrays.copyOfRange(smoother.x, from, to);
      int[] py = java.util.Arrays.copyOfRange(smoother.y, from, to);
      out.add(new Chain(px, py, chain.terrain, chain.left, chain.right));
    }
    return out;
  }

  /** Writes a line with points every half cell; returns how many. */
  private int refined(int[] lineX, int[] lineY, int[] toX, int[] toY, int at) {
    int n = 0;
    for (int i = 0; i < lineX.length; i++) {
      int parts = 1;
      if (i + 1 < lineX.length) {
        double length = Math.hypot(lineX[i + 1] - lineX[i], lineY[i + 1] - lineY[i]);
        parts = Math.max(1, (int) Math.rint(2 * length / cell));
      }
      for (int k = 0; k < parts; k++) {
        if (toX != null) {
          double share = (double) k / parts;
          int next = Math.min(i + 1, lineX.length - 1);
          toX[at + n] = (int) Math.rint(lineX[i] + share * (lineX[next] - lineX[i]));
          toY[at + n] = (int) Math.rint(lineY[i] + share * (lineY[next] - lineY[i]));
        }
        n++;
      }
    }
    return n;
  }

  /** Sets where the points of one chain should go. */
  private void aim(int from, int to) {
    int n = to - from;
    boolean closed = x[from] == x[to - 1] && y[from] == y[to - 1];
    double[] px = new double[n];
    double[] py = new double[n];
    for (int i = 0; i < n; i++) {
      px[i] = x[from + i];
      py[i] = y[from + i];
    }
    double area2 = cross2(px, py);
    int rounds = closed ? Math.min(ROUNDS, n / POINTS_PER_ROUND) : ROUNDS;
    for (int round = 0; round < rounds; round++) {
      px = mean(px);
      py = mean(py);
    }
    limit(px, py, from, MOST_CELLS);
    for (int round = 0; round < PASSES; round++) {
      shift(px, py, (area2 - cross2(px, py)) / 2);
      limit(px, py, from, MOST_SHIFTED_CELLS);
    }
    for (int i = 0; i < n; i++) {
      goalX[from + i] = (int) Math.rint(px[i]);
      goalY[from + i] = (int) Math.rint(py[i]);
    }
  }

  private static double[] mean(double[] p) {
    double[] out = p.clone();
    for (int i = 1; i + 1 < p.length; i++) {
      out[i] = (p[i - 1] + 2 * p[i] + p[i + 1]) / 4;
    }
    return out;
  }

  private void limit(double[] px, double[] py, int from, double cells) {
    for (int i = 0; i < px.length; i++) {
      double dx = px[i] - x[from + i];
      double dy = py[i] - y[from + i];
      double far = Math.hypot(dx, dy);
      if (far > cells * cell) {
        px[i] = x[from + i] + dx / far * cells * cell;
        py[i] = y[from + i] + dy / far * cells * cell;
      }
    }
  }

  /** Moves the points between the ends to the right, so that so much area comes to the left. */
  private static void shift(double[] px, double[] py, double area) {
    int n = px.length;
    double length = 0;
    for (int i = 1; i + 1 < n; i++) {
      length += Math.hypot(px[i + 1] - px[i - 1], py[i + 1] - py[i - 1]) / 2;
    }
    if (!(length > 0)) {
      return;
    }
    double by = area / length;
    double[] oldX = px.clone();
    double[] oldY = py.clone();
    for (int i = 1; i + 1 < n; i++) {
      double dx = oldX[i + 1] - oldX[i - 1];
      double dy = oldY[i + 1] - oldY[i - 1];
      double norm = Math.hypot(dx, dy);
      if (norm > 0) {
        px[i] += dy / norm * by;
        py[i] -= dx / norm * by;
      }
    }
  }

  private static double cross2(double[] px, double[] py) {
    double sum = 0;
    for (int i = 0; i + 1 < px.length; i++) {
      sum += px[i] * py[i + 1] - px[i + 1] * py[i];
    }
    return sum;
  }

  private void move() {
    for (int b = 0; b < x.length; b++) {
      if (before[b] >= 0 && after[b] >= 0 && (x[b] != goalX[b] || y[b] != goalY[b])) {
        if (free(b, goalX[b], goalY[b])) {
          x[b] = goalX[b];
          y[b] = goalY[b];
        }
      }
    }
  }

  /**
   * Whether a point can move so that its two lines sweep over no other point, and its way crosses
   * no other line: then they cross nothing where they come to lie.
   */
  private boolean free(int b, int px, int py) {
    int a = before[b];
    int c = after[b];
    int spare = (int) (2 * cell);
    return buckets.none(
        Math.min(Math.min(x[a], x[c]), Math.min(x[b], px)) - spare,
        Math.min(Math.min(y[a], y[c]), Math.min(y[b], py)) - spare,
        Math.max(Math.max(x[a], x[c]), Math.max(x[b], px)) + spare,
        Math.max(Math.max(y[a], y[c]), Math.max(y[b], py)) + spare,
        i ->
            i != b
                && (swept(a, b, px, py, i)
                    || swept(c, b, px, py, i)
                    || i != a
                        && after[i] >= 0
                        && after[i] != b
                        && crosses(i, after[i], b, px, py)));
  }

  private boolean swept(int a, int b, int px, int py, int i) {
    if (x[i] == x[a] && y[i] == y[a]) {
      return false;
    }
    int sign = GridUnits.turn(x[a], y[a], x[b], y[b], px, py) < 0 ? -1 : 1;
    return sign * GridUnits.turn(x[a], y[a], x[b], y[b], x[i], y[i]) >= 0
        && sign * GridUnits.turn(x[b], y[b], px, py, x[i], y[i]) >= 0
        && sign * GridUnits.turn(px, py, x[a], y[a], x[i], y[i]) >= 0;
  }

  private boolean crosses(int i, int k, int b, int px, int py) {
    long p = GridUnits.turn(x[i], y[i], x[k], y[k], x[b], y[b]);
    long q = GridUnits.turn(x[i], y[i], x[k], y[k], px, py);
    long r = GridUnits.turn(x[b], y[b], px, py, x[i], y[i]);
    long s = GridUnits.turn(x[b], y[b], px, py, x[k], y[k]);
    return (p >= 0) != (q > 0) && (r > 0) != (s > 0);
  }
}
