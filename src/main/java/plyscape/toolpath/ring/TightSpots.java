package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import plyscape.toolpath.lattice.LineSquares;
import plyscape.toolpath.lattice.Ring;

/**
 * Small places where a cutter just fits, and the short ways that take them: one after the other
 * where it may go straight from each to the next, so that it comes down once for a row of them.
 */
final class TightSpots {

  /** With less room than this a place is a point, mm. */
  private static final double POINT_MM = 0.004;

  /** A way of no length isn't one, mm. */
  private static final double DOT_MM = 5e-4;

  /** Sides of the turn that covers a place. */
  private static final int SIDES = 8;

  /** A place of the cutter's centre, panel mm, and how far it may go from there any way. */
  private record Spot(double x, double y, double roomMm) {

    double to(Spot other) {
      return Math.hypot(other.x - x, other.y - y);
    }
  }

  /** Whether the cutter's centre may go straight from one place to another. */
  interface Free {
    /** From (ax, ay) to (bx, by), mm. */
    boolean between(double ax, double ay, double bx, double by);
  }

  private final double reachMm;
  private final Free free;
  private final List<Spot> spots = new ArrayList<>();
  private final LineSquares<Integer> squares;
  private boolean[] taken;

  /**
   * None yet.
   *
   * @param reachMm places farther apart are taken each by itself
   */
  TightSpots(double reachMm, Free free) {
    this.reachMm = reachMm;
    this.free = free;
    squares = new LineSquares<>(reachMm);
  }

  /**
   * One more.
   *
   * @param roomMm all places within it are free
   */
  void add(double x, double y, double roomMm) {
    squares.add(spots.size(), new double[] {x}, new double[] {y}, false);
    spots.add(new Spot(x, y, roomMm));
  }

  /** Open rings of index 0 that take them all, rows from one end to the other. */
  List<Ring> ways() {
    taken = new boolean[spots.size()];
    List<List<Integer>> near = new ArrayList<>();
    for (int i = 0; i < spots.size(); i++) {
      near.add(near(i));
    }
    List<Ring> rings = new ArrayList<>();
    for (int i = 0; i < spots.size(); i++) {
      if (!taken[i]) {
        List<Integer> there = row(i, near);
        there.forEach(spot -> taken[spot] = false);
        // From anywhere on it to an end, and back over all of it.
        rings.add(ring(row(there.get(there.size() - 1), near)));
      }
    }
    return rings;
  }

  /** Those that can be gone to straight, nearest first. */
  private List<Integer> near(int of) {
    Spot spot = spots.get(of);
    List<Integer> near = new ArrayList<>();
    squares.near(
        spot.x(),
        spot.y(),
        reachMm,
        other -> {
          Spot there = spots.get(other);
          if (other != of && free.between(spot.x(), spot.y(), there.x(), there.y())) {
            near.add(other);
          }
        });
    near.sort(
        Comparator.comparingDouble((Integer other) -> spot.to(spots.get(other)))
            .thenComparingInt(other -> other));
    return near;
  }

  /** From a place always on to the nearest that isn't taken yet. */
  private List<Integer> row(int from, List<List<Integer>> near) {
    List<Integer> row = new ArrayList<>();
    int at = from;
    while (at >= 0) {
      taken[at] = true;
      row.add(at);
      at = near.get(at).stream().filter(other -> !taken[other]).findFirst().orElse(-1);
    }
    return row;
  }

  private Ring ring(List<Integer> row) {
    double[] x = new double[row.size() * (SIDES + 3) + 1];
    double[] y = new double[x.length];
    int n = 0;
    for (int number : row) {
      Spot spot = spots.get(number);
      boolean point = spot.roomMm() < POINT_MM;
      for (int a = point || row.size() == 1 ? 0 : -1; !point && a <= SIDES; a++) {
        double out = a < 0 ? 0 : spot.roomMm();
        x[n] = spot.x() + out * Math.cos(a * 2 * Math.PI / SIDES);
        y[n++] = spot.y() + out * Math.sin(a * 2 * Math.PI / SIDES);
      }
      x[n] = spot.x();
      y[n++] = spot.y();
    }
    if (n == 1) {
      x[n] = x[0] + DOT_MM;
      y[n++] = y[0];
    }
    return new Ring(0, false, Arrays.copyOf(x, n), Arrays.copyOf(y, n));
  }
}
