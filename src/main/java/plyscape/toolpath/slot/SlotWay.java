package plyscape.toolpath.slot;

import java.util.Arrays;
import plyscape.toolpath.lattice.Ring;

/**
 * A narrow place as a row of cross-sections, panel mm: the middle, and how far the cutter's centre
 * may go to the left and to the right of it, where it touches the wall.
 *
 * @param x the middle's X
 * @param y the middle's Y
 * @param leftX where the cutter touches the left wall, X
 * @param leftY the same, Y
 * @param rightX where it touches the right wall, X
 * @param rightY the same, Y
 * @param closed whether the last section joins the first
 */
public record SlotWay(
    double[] x,
    double[] y,
    double[] leftX,
    double[] leftY,
    double[] rightX,
    double[] rightY,
    boolean closed) {

  /** Checks that all are of one length. */
  public SlotWay {
    int n = x.length;
    if (n < 2
        || y.length != n
        || leftX.length != n
        || leftY.length != n
        || rightX.length != n
        || rightY.length != n) {
      throw new IllegalArgumentException("bad slot of " + n + " sections");
    }
  }

  /** Cross-sections. */
  public int size() {
    return x.length;
  }

  /** How far apart the ways along both walls are at a section, mm. */
  public double roomMm(int i) {
    double dx = leftX[i] - rightX[i];
    double dy = leftY[i] - rightY[i];
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** Way from one section to the next along the middle, mm. */
  public double wayMm(int from, int to) {
    double dx = x[to] - x[from];
    double dy = y[to] - y[from];
    return Math.sqrt(dx * dx + dy * dy);
  }

  /** Length of the middle, mm. */
  public double lengthMm() {
    double sum = closed ? wayMm(x.length - 1, 0) : 0;
    for (int i = 1; i < x.length; i++) {
      sum += wayMm(i - 1, i);
    }
    return sum;
  }

  /** Some neighbouring sections, both ends included, as an open one. */
  public SlotWay part(int from, int to) {
    return new SlotWay(
        Arrays.copyOfRange(x, from, to + 1),
        Arrays.copyOfRange(y, from, to + 1),
        Arrays.copyOfRange(leftX, from, to + 1),
        Arrays.copyOfRange(leftY, from, to + 1),
        Arrays.copyOfRange(rightX, from, to + 1),
        Arrays.copyOfRange(rightY, from, to + 1),
        false);
  }

  /** A closed one as an open one whose last section is its first. */
  public SlotWay opened() {
    return new SlotWay(
        round(x), round(y), round(leftX), round(leftY), round(rightX), round(rightY), false);
  }

  private static double[] round(double[] a) {
    double[] b = Arrays.copyOf(a, a.length + 1);
    b[a.length] = a[0];
    return b;
  }

  /** The same the other way round, left and right swapped. */
  public SlotWay reversed() {
    return new SlotWay(
        back(x), back(y), back(rightX), back(rightY), back(leftX), back(leftY), closed);
  }

  private static double[] back(double[] a) {
    double[] b = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      b[i] = a[a.length - 1 - i];
    }
    return b;
  }

  /** The way along the left wall as an open or closed line, or that along the right wall. */
  public Ring side(boolean left) {
    return new Ring(0, closed, left ? leftX : rightX, left ? leftY : rightY);
  }
}
