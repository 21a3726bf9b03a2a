package plyscape.toolpath.slot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import plyscape.toolpath.lattice.Ring;

/**
 * What the ways through narrow places cover: the ground between their left and right sides. A ring
 * that is wholly on it has nothing left to cut once the ways are cut.
 */
final class SlotCover {

  /** Rings may be as far as this off the ground covered, mm: the rest is no more than wall skin. */
  private static final double OFF_MM = SlotChoice.CLEARED_MM;

  /** Rings are looked at about as far apart as this, mm. */
  private static final double STEP_MM = 0.05;

  /** Side of the squares by which sections are found, mm. */
  private static final double SQUARE_MM = 0.5;

  /** A stretch between two sections: left and right of the first, right and left of the next. */
  private record Stretch(double[] x, double[] y) {

    static Stretch of(SlotWay way, int i) {
      return new Stretch(
          new double[] {way.leftX()[i], way.rightX()[i], way.rightX()[i + 1], way.leftX()[i + 1]},
          new double[] {way.leftY()[i], way.rightY()[i], way.rightY()[i + 1], way.leftY()[i + 1]});
    }

    /** Whether a place lies on it or hardly off. */
    boolean near(double px, double py) {
      boolean inside = false;
      for (int a = 0, b = 3; a < 4; b = a++) {
        double dx = x[b] - x[a];
        double dy = y[b] - y[a];
        double squared = dx * dx + dy * dy;
        double t = squared == 0 ? 0 : ((px - x[a]) * dx + (py - y[a]) * dy) / squared;
        t = Math.max(0, Math.min(1, t));
        double ex = px - x[a] - t * dx;
        double ey = py - y[a] - t * dy;
        if (ex * ex + ey * ey <= OFF_MM * OFF_MM) {
          return true;
        }
        if (y[a] > py != y[b] > py && px < x[a] + (py - y[a]) / dy * dx) {
          inside = !inside;
        }
      }
      return inside;
    }
  }

  private final Map<Long, List<Stretch>> squares = new HashMap<>();

  /** Of some ways. */
  SlotCover(List<SlotWay> ways) {
    for (SlotWay way : ways) {
      for (int i = 0; i + 1 < way.size(); i++) {
        add(Stretch.of(way, i));
      }
    }
  }

  private void add(Stretch stretch) {
    double[] x = stretch.x().clone();
    double[] y = stretch.y().clone();
    Arrays.sort(x);
    Arrays.sort(y);
    for (int i = square(x[0] - OFF_MM); i <= square(x[3] + OFF_MM); i++) {
      for (int j = square(y[0] - OFF_MM); j <= square(y[3] + OFF_MM); j++) {
        squares.computeIfAbsent(key(i, j), k -> new ArrayList<>()).add(stretch);
      }
    }
  }

  private static int square(double mm) {
    return (int) Math.floor(mm / SQUARE_MM);
  }

  private static long key(int i, int j) {
    return ((long) i << 32) + j;
  }

  /** Whether they cover all of a ring. */
  boolean of(Ring ring) {
    double[] x = ring.x();
    double[] y = ring.y();
    int n = ring.size();
    for (int i = 0; i < n; i++) {
      int to = i + 1 < n ? i + 1 : ring.closed() ? 0 : i;
      int steps = 1 + (int) (Math.hypot(x[to] - x[i], y[to] - y[i]) / STEP_MM);
      for (int s = 0; s < steps; s++) {
        double t = (double) s / steps;
        if (!at(x[i] + t * (x[to] - x[i]), y[i] + t * (y[to] - y[i]))) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean at(double x, double y) {
    return squares.getOrDefault(key(square(x), square(y)), List.of()).stream()
        .anyMatch(stretch -> stretch.near(x, y));
  }
}
