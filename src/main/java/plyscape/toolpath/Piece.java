package plyscape.toolpath;

/**
 * A stretch of a ring that is to be cut, panel mm.
 *
 * @param index ring it belongs to, 0 at the wall
 * @param closed whether it is the whole ring; then the first point isn't repeated at the end
 * @param x points' X
 * @param y points' Y
 */
record Piece(int index, boolean closed, double[] x, double[] y) {

  /** Whether it runs along the wall, so that its direction is fixed. */
  boolean wall() {
    return index == 0;
  }

  /** Points. */
  int size() {
    return x.length;
  }

  /** Length, mm. */
  double lengthMm() {
    return new Ring(index, closed, x, y).lengthMm();
  }

  /** The same the other way round. */
  Piece reversed() {
    int n = x.length;
    double[] rx = new double[n];
    double[] ry = new double[n];
    for (int i = 0; i < n; i++) {
      rx[i] = x[n - 1 - i];
      ry[i] = y[n - 1 - i];
    }
    return new Piece(index, closed, rx, ry);
  }

  /** A closed piece from another of its points on. */
  Piece startingAt(int point) {
    int n = x.length;
    double[] rx = new double[n];
    double[] ry = new double[n];
    for (int i = 0; i < n; i++) {
      rx[i] = x[(point + i) % n];
      ry[i] = y[(point + i) % n];
    }
    return new Piece(index, closed, rx, ry);
  }
}
