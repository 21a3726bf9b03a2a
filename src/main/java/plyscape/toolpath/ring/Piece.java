package plyscape.toolpath.ring;

import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.slot.SlotWay;

/**
 * A stretch of a ring that is to be cut, panel mm.
 *
 * @param index ring it belongs to, 0 at the wall
 * @param closed whether it is the whole ring; then the first point isn't repeated at the end
 * @param x points' X
 * @param y points' Y
 * @param slot the narrow place of which it is the middle; null for a stretch of a ring
 * @param against whether it runs against the direction in which walls are cut
 * @param needed of a whole ring all but its longest stretch that needn't be cut; null for all of it
 */
public record Piece(
    int index,
    boolean closed,
    double[] x,
    double[] y,
    SlotWay slot,
    boolean against,
    Piece needed) {

  /** A stretch of a ring. */
  public Piece(int index, boolean closed, double[] x, double[] y) {
    this(index, closed, x, y, null, false, null);
  }

  /** A whole ring. */
  public static Piece of(Ring ring) {
    return new Piece(ring.index(), ring.closed(), ring.x(), ring.y());
  }

  /** A whole ring of which only a stretch is needed. */
  static Piece of(Ring ring, Piece needed) {
    return new Piece(ring.index(), ring.closed(), ring.x(), ring.y(), null, false, needed);
  }

  /** A narrow place, cut to its floor in one go. */
  public static Piece of(SlotWay slot) {
    return new Piece(0, false, slot.x(), slot.y(), slot, false, null);
  }

  /** Whether it runs along the wall, so that its direction is fixed. */
  public boolean wall() {
    return index == 0;
  }

  /** Points. */
  public int size() {
    return x.length;
  }

  /** Length, mm. */
  public double lengthMm() {
    return new Ring(index, closed, x, y).lengthMm();
  }

  /** The same the other way round. */
  public Piece reversed() {
    int n = x.length;
    double[] rx = new double[n];
    double[] ry = new double[n];
    for (int i = 0; i < n; i++) {
      rx[i] = x[n - 1 - i];
      ry[i] = y[n - 1 - i];
    }
    SlotWay slotBack = slot == null ? null : slot.reversed();
    Piece neededBack = needed == null ? null : needed.reversed();
    return new Piece(index, closed, rx, ry, slotBack, against, neededBack);
  }

  /** The same, said to run against the direction in which walls are cut, or not. */
  public Piece against(boolean other) {
    return other == against ? this : new Piece(index, closed, x, y, slot, other, needed);
  }

  /** Its point nearest to a place. */
  public int nearest(double toX, double toY) {
    int nearest = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < x.length; i++) {
      double d = Math.hypot(x[i] - toX, y[i] - toY);
      if (d < least) {
        least = d;
        nearest = i;
      }
    }
    return nearest;
  }

  /** A closed piece from its point nearest to a place. */
  public Piece startingNear(double toX, double toY) {
    return startingAfter(nearest(toX, toY), 0);
  }

  /** A closed piece from the place on it that lies a way after one of its points, mm. */
  public Piece startingAfter(int point, double wayMm) {
    int n = x.length;
    int a = point;
    double rest = wayMm;
    for (int guard = 0; guard < n; guard++) {
      int b = (a + 1) % n;
      double d = Math.hypot(x[b] - x[a], y[b] - y[a]);
      if (d > rest) {
        double t = rest / d;
        double[] rx = new double[t > 1e-9 ? n + 1 : n];
        double[] ry = new double[rx.length];
        rx[0] = x[a] + t * (x[b] - x[a]);
        ry[0] = y[a] + t * (y[b] - y[a]);
        for (int i = 1; i < rx.length; i++) {
          rx[i] = x[(a + i) % n];
          ry[i] = y[(a + i) % n];
        }
        return new Piece(index, true, rx, ry);
      }
      rest -= d;
      a = b;
    }
    // All the way round: a ring shorter than the way, or all of it at one place.
    return this;
  }
}
