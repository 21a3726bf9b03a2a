package plyscape.toolpath.lattice;

/**
 * Which parts of a node's cell a disk covers on a straight way: {@link #SIDE} x {@link #SIDE} parts
 * a cell, so that slivers of an eighth of a lattice step are seen, as bits, row by row from the
 * bottom left. A part counts by its centre. Reused for speed, so not for several threads.
 */
final class CellCover {

  /** Parts on a side of a cell. */
  static final int SIDE = 8;

  /** All parts of a cell. */
  static final long ALL = -1L >>> (64 - SIDE * SIDE);

  private static final long ROW = (1L << SIDE) - 1;

  private final Lattice lattice;
  private final double partMm;
  private final Capsule capsule = new Capsule();
  private boolean any;
  private int row;

  /** First and last part covered in each row of parts, counted over the whole row of cells. */
  private final int[] from = new int[SIDE];

  private final int[] to = new int[SIDE];

  CellCover(Lattice lattice) {
    this.lattice = lattice;
    partMm = lattice.stepMm() / SIDE;
  }

  /** From a part's centre to its corners, mm. */
  double reachMm() {
    return partMm * Math.sqrt(0.5);
  }

  /** From a node to the centres of the outermost parts of its cell, mm. */
  double outermostMm() {
    return (SIDE - 1) * reachMm();
  }

  /** Takes the way from A to B and the radius, mm; nothing is covered unless that is positive. */
  void set(double ax, double ay, double bx, double by, double radius) {
    any = radius > 0;
    row = -1;
    if (any) {
      capsule.set(ax, ay, bx, by, radius);
    }
  }

  /** The parts covered of a node's cell. */
  long of(int column, int row) {
    if (!any) {
      return 0;
    }
    if (row != this.row) {
      this.row = row;
      chords(lattice.y(row) - (SIDE - 1) * 0.5 * partMm);
    }
    int left = column * SIDE;
    long parts = 0;
    for (int j = SIDE - 1; j >= 0; j--) {
      int a = from[j] - left;
      int b = to[j] - left;
      a = a > 0 ? a : 0;
      b = b < SIDE ? b : SIDE - 1;
      parts = parts << SIDE | (a <= b ? ROW >>> (SIDE - 1 - b + a) << a : 0);
    }
    return parts;
  }

  private void chords(double bottom) {
    capsule.chords(bottom, partMm, 0, SIDE - 1);
    double zero = lattice.minX() - (SIDE - 1) * 0.5 * partMm;
    for (int j = 0; j < SIDE; j++) {
      double left = capsule.ends[4 * j];
      double right = capsule.ends[4 * j + 1];
      boolean empty = left > right;
      from[j] = empty ? Integer.MAX_VALUE / 2 : (int) Math.ceil((left - zero) / partMm);
      to[j] = empty ? -1 : (int) Math.floor((right - zero) / partMm);
    }
  }
}
