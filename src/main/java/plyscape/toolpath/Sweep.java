package plyscape.toolpath;

/**
 * Visits the lattice nodes under a disk that moves along a straight line, as runs of neighbours in
 * a row. A node counts when its centre lies under the disk. Not for several threads.
 */
final class Sweep {

  /** Takes one run of nodes, both ends included. */
  interface Run {
    void nodes(int first, int last);
  }

  private final Lattice lattice;
  private final Capsule capsule = new Capsule();

  /** First and last node of each run found last. */
  int[] runs = new int[256];

  private int filled;

  Sweep(Lattice lattice) {
    this.lattice = lattice;
  }

  /** Everything under the disk on its way from A to B. */
  void all(double ax, double ay, double bx, double by, double radius, Run run) {
    give(all(ax, ay, bx, by, radius), run);
  }

  /** The same, less what the disk already covered at A. */
  void fresh(double ax, double ay, double bx, double by, double radius, Run run) {
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
  int all(double ax, double ay, double bx, double by, double radius) {
    visit(ax, ay, bx, by, radius, false);
    return filled;
  }

  /** The same, less what the disk already covered at A. */
  int fresh(double ax, double ay, double bx, double by, double radius) {
    visit(ax, ay, bx, by, radius, true);
    return filled;
  }

  private void visit(
      double ax, double ay, double bx, double by, double radius, boolean withoutStart) {
    filled = 0;
    capsule.set(ax, ay, bx, by, radius);
    double h = lattice.stepMm();
    int first = Math.max(0, (int) Math.ceil((capsule.bottom() - lattice.minY()) / h));
    int last = Math.min(lattice.rows() - 1, (int) Math.floor((capsule.top() - lattice.minY()) / h));
    if (runs.length < 4 * (last - first + 1)) {
      runs = new int[8 * (last - first + 1)];
    }
    for (int j = first; j <= last; j++) {
      if (!capsule.chord(lattice.y(j))) {
        continue;
      }
      int row = j * lattice.columns();
      int from = from(capsule.low);
      int to = to(capsule.high);
      if (withoutStart && capsule.startLow <= capsule.startHigh) {
        int startFrom = from(capsule.startLow);
        int startTo = to(capsule.startHigh);
        if (startFrom <= startTo) {
          add(row, from, Math.min(to, startFrom - 1));
          add(row, Math.max(from, startTo + 1), to);
          continue;
        }
      }
      add(row, from, to);
    }
  }

  private void add(int row, int from, int to) {
    if (from <= to) {
      runs[filled++] = row + from;
      runs[filled++] = row + to;
    }
  }

  private int from(double x) {
    return Math.max(0, (int) Math.ceil((x - lattice.minX()) / lattice.stepMm()));
  }

  private int to(double x) {
    return Math.min(
        lattice.columns() - 1, (int) Math.floor((x - lattice.minX()) / lattice.stepMm()));
  }
}
