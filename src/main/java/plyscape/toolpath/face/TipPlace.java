package plyscape.toolpath.face;

/**
 * A cutter's tip at any place, on a row of a {@link FaceLattice} or between two: what it takes off
 * the stock there. Immutable.
 *
 * @param u along the rows, mm
 * @param v across them, mm
 * @param depth of the tip, mm
 */
record TipPlace(FaceLattice lattice, CutterForm form, double u, double v, double depth) {

  /**
   * Whether more than a tolerance goes anywhere but from rests of roughing.
   *
   * @param asideMm even if the cutter were thinner by so much all round, mm
   */
  boolean takesOff(double toleranceMm, double asideMm) {
    double tip = depth - toleranceMm;
    int toRow = lastRow();
    int toColumn = lastColumn();
    for (int row = firstRow(); row <= toRow; row++) {
      for (int column = firstColumn(); column <= toColumn; column++) {
        int i = row * lattice.columns + column;
        if (lattice.stock[i] < tip && !lattice.rest[i]) {
          double off = Math.sqrt(squared(column, row)) + asideMm;
          if (within(off * off) && lattice.stock[i] < tip - form.height(off * off)) {
            return true;
          }
        }
      }
    }
    return false;
  }

  /** Lowers the stock, only in some rows. */
  void lower(int fromRow, int endRow) {
    int toRow = Math.min(endRow - 1, lastRow());
    int toColumn = lastColumn();
    for (int row = Math.max(fromRow, firstRow()); row <= toRow; row++) {
      for (int column = firstColumn(); column <= toColumn; column++) {
        double squared = squared(column, row);
        if (within(squared)) {
          int i = row * lattice.columns + column;
          lattice.stock[i] = Math.max(lattice.stock[i], (float) (depth - form.height(squared)));
        }
      }
    }
  }

  private boolean within(double squared) {
    return squared <= form.radiusMm() * form.radiusMm();
  }

  private double squared(int column, int row) {
    double du = lattice.u(column) - u;
    double dv = lattice.v(row) - v;
    return du * du + dv * dv;
  }

  private int firstColumn() {
    return Math.max(0, (int) Math.ceil((u - form.radiusMm() - lattice.minU) / lattice.stepMm));
  }

  private int lastColumn() {
    int last = (int) Math.floor((u + form.radiusMm() - lattice.minU) / lattice.stepMm);
    return Math.min(lattice.columns - 1, last);
  }

  private int firstRow() {
    return Math.max(0, (int) Math.ceil((v - form.radiusMm() - lattice.minV) / lattice.stepMm));
  }

  private int lastRow() {
    int last = (int) Math.floor((v + form.radiusMm() - lattice.minV) / lattice.stepMm);
    return Math.min(lattice.rows - 1, last);
  }
}
