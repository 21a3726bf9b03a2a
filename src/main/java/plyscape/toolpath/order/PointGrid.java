package plyscape.toolpath.order;

import java.util.Arrays;
import java.util.function.IntPredicate;

/**
 * Points in square buckets, to find those nearest to a place; points can be put in and taken out.
 * Of equally near ones the lowest number wins.
 */
public final class PointGrid {

  private final double[] x;
  private final double[] y;
  private final double minX;
  private final double minY;
  private final double cell;
  private final int columns;
  private final int rows;
  private final int[] head;
  private final int[] next;
  private final int[] previous;

  /**
   * An empty grid for these points.
   *
   * @param x X of all points that may be put in
   * @param y Y of them
   */
  public PointGrid(double[] x, double[] y) {
    this.x = x;
    this.y = y;
    minX = Arrays.stream(x).min().orElse(0);
    minY = Arrays.stream(y).min().orElse(0);
    double width = Arrays.stream(x).max().orElse(0) - minX;
    double height = Arrays.stream(y).max().orElse(0) - minY;
    // About one point a bucket; the second term keeps long thin sets from getting too many buckets.
    cell =
        Math.max(
                Math.sqrt(width * height / Math.max(1, x.length)),
                Math.max(width, height) / (x.length + 1))
            + 1e-9;
    columns = (int) (width / cell) + 1;
    rows = (int) (height / cell) + 1;
    head = new int[columns * rows];
    next = new int[x.length];
    previous = new int[x.length];
    Arrays.fill(head, -1);
  }

  public void put(int point) {
    int bucket = row(y[point]) * columns + column(x[point]);
    next[point] = head[bucket];
    previous[point] = -1 - bucket;
    if (head[bucket] >= 0) {
      previous[head[bucket]] = point;
    }
    head[bucket] = point;
  }

  void take(int point) {
    if (previous[point] < 0) {
      head[-1 - previous[point]] = next[point];
    } else {
      next[previous[point]] = next[point];
    }
    if (next[point] >= 0) {
      previous[next[point]] = previous[point];
    }
  }

  /**
   * Fills {@code found} with the nearest points, nearest first, and gives how many there are.
   *
   * @param squared scratch of the same length
   */
  int nearest(double px, double py, int[] found, double[] squared) {
    int count = 0;
    int c = column(px);
    int r = row(py);
    int last = Math.max(Math.max(c, columns - 1 - c), Math.max(r, rows - 1 - r));
    for (int ring = 0; ring <= last; ring++) {
      if (count == found.length) {
        // All points in this ring of buckets and beyond are at least this far away.
        double far = Math.max(0, (ring - 1) * cell);
        if (far * far > squared[count - 1]) {
          break;
        }
      }
      for (int row = Math.max(0, r - ring); row <= Math.min(rows - 1, r + ring); row++) {
        int step = row == r - ring || row == r + ring ? 1 : Math.max(1, 2 * ring);
        for (int column = c - ring; column <= c + ring; column += step) {
          if (column >= 0 && column < columns) {
            count = collect(head[row * columns + column], px, py, found, squared, count);
          }
        }
      }
    }
    return count;
  }

  /**
   * The nearest other point that satisfies a condition and is nearer than a limit, or -1.
   *
   * @param limitSquared square of the limit; infinite for none
   */
  public int nearestWhere(int point, IntPredicate wanted, double limitSquared) {
    int best = -1;
    double least = limitSquared;
    int c = column(x[point]);
    int r = row(y[point]);
    int last = Math.max(Math.max(c, columns - 1 - c), Math.max(r, rows - 1 - r));
    for (int ring = 0; ring <= last; ring++) {
      double far = Math.max(0, (ring - 1) * cell);
      if (far * far >= least) {
        break;
      }
      for (int row = Math.max(0, r - ring); row <= Math.min(rows - 1, r + ring); row++) {
        int step = row == r - ring || row == r + ring ? 1 : Math.max(1, 2 * ring);
        for (int column = c - ring; column <= c + ring; column += step) {
          if (column < 0 || column >= columns) {
            continue;
          }
          for (int q = head[row * columns + column]; q >= 0; q = next[q]) {
            double dx = x[q] - x[point];
            double dy = y[q] - y[point];
            double d = dx * dx + dy * dy;
            if (d < least && q != point && wanted.test(q)) {
              least = d;
              best = q;
            }
          }
        }
      }
    }
    return best;
  }

  private int collect(int first, double px, double py, int[] found, double[] squared, int count) {
    int filled = count;
    for (int point = first; point >= 0; point = next[point]) {
      double dx = x[point] - px;
      double dy = y[point] - py;
      double d = dx * dx + dy * dy;
      if (filled == found.length && !before(d, point, squared[filled - 1], found[filled - 1])) {
        continue;
      }
      int at = filled < found.length ? filled++ : filled - 1;
      while (at > 0 && before(d, point, squared[at - 1], found[at - 1])) {
        found[at] = found[at - 1];
        squared[at] = squared[at - 1];
        at--;
      }
      found[at] = point;
      squared[at] = d;
    }
    return filled;
  }

  private static boolean before(double d, int point, double otherD, int other) {
    return d < otherD || d == otherD && point < other;
  }

  private int column(double px) {
    return Math.min(Math.max((int) ((px - minX) / cell), 0), columns - 1);
  }

  private int row(double py) {
    return Math.min(Math.max((int) ((py - minY) / cell), 0), rows - 1);
  }
}
