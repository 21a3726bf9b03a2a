package plyscape.toolpath.lattice;

/**
 * Visits the lattice nodes under a disk that moves along a straight line, as runs of neighbours in
 * a row. A node counts when its centre lies under the disk. Not for several threads.
 */
public final class Sweep {

  /** Takes one run of nodes, both ends included. */
  public interface Run {
    void nodes(int first, int last);
  }

  private final double minX;
  private final double minY;
  private final double stepMm;
  private final double inverse;
  private final int columns;
  private final int rows;
  private final Capsule capsule = new Capsule();

  /** First and last node of each run found last. */
  public int[] runs = new int[256];

  private int filled;

  public Sweep(Lattice lattice) {
    minX = lattice.minX();
    minY = lattice.minY();
    stepMm = lattice.stepMm();
    inverse = 1 / stepMm;
    columns = lattice.columns();
    rows = lattice.rows();
  }

  /** Everything under the disk on its way from A to B. */
  public void all(double ax, double ay, double bx, double by, double radius, Run run) {
    give(all(ax, ay, bx, by, radius), run);
  }

  /** The same, less what the disk already covered at A. */
  public void fresh(double ax, double ay, double bx, double by, double radius, Run run) {
    give(fresh(ax, ay, bx, by, radius), run);
  }

  private void give(int count, Run run) {
    for (int k = 0; k < count; k += 2) {
      run.nodes(runs[k], runs[k + 1]);
    }
  }

  /**
   * Puts everything under the disk on its way from A to B into {@link #runs}; how many numbers that
   * are.
   */
  public int all(double ax, double ay, double bx, double by, double radius) {
    capsule.set(ax, ay, bx, by, radius);
    visit(false);
    return filled;
  }

  /** The same, less what the disk already covered at A. */
  public int fresh(double ax, double ay, double bx, double by, double radius) {
    return fresh(ax, ay, bx, by, radius, radius);
  }

  /** The same, less what a disk of another radius covers at A; none if that is not positive. */
  int fresh(double ax, double ay, double bx, double by, double radius, double startRadius) {
    capsule.set(ax, ay, bx, by, radius);
    if (startRadius != radius) {
      capsule.setStart(startRadius);
    }
    visit(true);
    return filled;
  }

  private void visit(boolean withoutStart) {
    int filled = 0;
    double bottom = (capsule.bottom() - minY) * inverse;
    double top = (capsule.top() - minY) * inverse;
    int first = atOrAfter(bottom);
    int last = top < 0 ? -1 : (int) top;
    last = last < rows ? last : rows - 1;
    if (runs.length < 4 * (last - first + 1)) {
      runs = new int[8 * (last - first + 1)];
    }
    int[] found = runs;
    capsule.chords(minY, stepMm, first, last);
    double[] ends = capsule.ends;
    double left = minX;
    double scale = inverse;
    int across = columns;
    int at = 0;
    for (int j = first; j <= last; j++, at += 4) {
      if (ends[at] > ends[at + 1]) {
        continue;
      }
      int row = j * across;
      int from = atOrAfter((ends[at] - left) * scale);
      int to = atOrBefore((ends[at + 1] - left) * scale, across);
      if (withoutStart && ends[at + 2] <= ends[at + 3]) {
        int startFrom = atOrAfter((ends[at + 2] - left) * scale);
        int startTo = atOrBefore((ends[at + 3] - left) * scale, across);
        if (startFrom <= startTo) {
          if (from < startFrom) {
            found[filled++] = row + from;
            found[filled++] = row + (to < startFrom ? to : startFrom - 1);
          }
          if (to > startTo) {
            found[filled++] = row + (from > startTo ? from : startTo + 1);
            found[filled++] = row + to;
          }
          continue;
        }
      }
      if (from <= to) {
        found[filled++] = row + from;
        found[filled++] = row + to;
      }
    }
    this.filled = filled;
  }

  // Casts rather than Math.ceil and Math.floor: called for every row of every stretch, and Java's
  // first compiler makes real calls of those.
  private static int atOrAfter(double u) {
    if (u <= 0) {
      return 0;
    }
    int whole = (int) u;
    return whole < u ? whole + 1 : whole;
  }

  private static int atOrBefore(double u, int columns) {
    if (u < 0) {
      return -1;
    }
    return u < columns ? (int) u : columns - 1;
  }
}
