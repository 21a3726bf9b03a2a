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

  Sweep(Lattice lattice) {
    this.lattice = lattice;
  }

  /** Everything under the disk on its way from A to B. */
  void all(double ax, double ay, double bx, double by, double radius, Run run) {
    visit(ax, ay, bx, by, radius, run, false);
  }

  /** The same, less what the disk already covered at A. */
  void fresh(double ax, double ay, double bx, double by, double radius, Run run) {
    visit(ax, ay, bx, by, radius, run, true);
  }

  private void visit(
      double ax, double ay, double bx, double by, double radius, Run run, boolean withoutStart) {
    capsule.set(ax, ay, bx, by, radius);
    double h = lattice.stepMm();
    int first = Math.max(0, (int) Math.ceil((capsule.bottom() - lattice.minY()) / h));
    int last = Math.min(lattice.rows() - 1, (int) Math.floor((capsule.top() - lattice.minY()) / h));
    for (int j = first; j <= last; j++) {
      double y = lattice.y(j);
      if (!capsule.chord(y)) {
        continue;
      }
      int row = j * lattice.columns();
      int from = from(capsule.low);
      int to = to(capsule.high);
      if (withoutStart && capsule.startLow <= capsule.startHigh) {
        int startFrom = from(capsule.startLow);
        int startTo = to(capsule.startHigh);
        if (startFrom <= startTo) {
          emit(run, row, from, Math.min(to, startFrom - 1));
          emit(run, row, Math.max(from, startTo + 1), to);
          continue;
        }
      }
      emit(run, row, from, to);
    }
  }

  private static void emit(Run run, int row, int from, int to) {
    if (from <= to) {
      run.nodes(row + from, row + to);
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
