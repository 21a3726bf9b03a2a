package plyscape.toolpath.lattice;

/**
 * A contour of a distance field as a polyline, panel mm; the higher values lie on its left. A
 * closed one doesn't repeat its first point. The arrays are shared, not copied.
 *
 * @param index which contour, 0 at the wall, growing inward
 * @param closed whether the last point joins the first
 * @param x points' X
 * @param y points' Y
 */
public record Ring(int index, boolean closed, double[] x, double[] y) {

  /** Points. */
  public int size() {
    return x.length;
  }

  /** Length, the closing line included, mm. */
  public double lengthMm() {
    double sum = 0;
    for (int i = closed ? 0 : 1; i < x.length; i++) {
      int before = i == 0 ? x.length - 1 : i - 1;
      double dx = x[i] - x[before];
      double dy = y[i] - y[before];
      sum += Math.sqrt(dx * dx + dy * dy);
    }
    return sum;
  }
}
