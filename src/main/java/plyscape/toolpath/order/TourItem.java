package plyscape.toolpath.order;

/**
 * Something to be cut in one go, for {@link TourOrder}: where it can be entered and left, and what
 * must be cut before it. Immutable; the arrays are shared, not copied.
 *
 * @param x X of the points, mm
 * @param y Y of the points
 * @param kind which of the points are entry and exit
 * @param after indices of the items that must come earlier, not necessarily all; may be empty
 */
public record TourItem(double[] x, double[] y, Kind kind, int[] after) {

  /** How an item can be run. */
  public enum Kind {
    /** Closed: entered and left at any one of its points. */
    RING,
    /** From the first point to the last. */
    PATH,
    /** From the first point to the last, or back. */
    EITHER_WAY
  }

  /** Checks that there are points. */
  public TourItem {
    if (x.length == 0 || x.length != y.length) {
      throw new IllegalArgumentException(x.length + " and " + y.length + " coordinates");
    }
  }

  /** A path in its own direction that leaves elsewhere than it is entered. */
  public static TourItem path(double inX, double inY, double outX, double outY, int... after) {
    return new TourItem(new double[] {inX, outX}, new double[] {inY, outY}, Kind.PATH, after);
  }

  /** In how many ways it can be run. */
  int ways() {
    return switch (kind) {
      case RING -> x.length;
      case PATH -> 1;
      case EITHER_WAY -> 2;
    };
  }

  /** The point where a way enters. */
  int entry(int way) {
    return switch (kind) {
      case RING -> way;
      case PATH -> 0;
      case EITHER_WAY -> way == 0 ? 0 : x.length - 1;
    };
  }

  /** The point where a way leaves. */
  int exit(int way) {
    return switch (kind) {
      case RING -> way;
      case PATH -> x.length - 1;
      case EITHER_WAY -> way == 0 ? x.length - 1 : 0;
    };
  }
}
