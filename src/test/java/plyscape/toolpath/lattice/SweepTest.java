package plyscape.toolpath.lattice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;

/** Runs of nodes against the distance of every node from the line, worked out plainly. */
class SweepTest {

  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 12, 9), 0.75);

  /** Nodes this near to the rim may fall either way, mm. */
  private static final double RIM_MM = 1e-9;

  @Test
  void randomLines_coverTheNodesWithinTheRadius() {
    Random random = new Random(4);
    Sweep sweep = new Sweep(LATTICE);
    for (int trial = 0; trial < 400; trial++) {
      double ax = 12 * random.nextDouble();
      double ay = 9 * random.nextDouble();
      double[] way = way(random, trial);
      double radius = 0.2 + 2.5 * random.nextDouble();
      int all = sweep.all(ax, ay, ax + way[0], ay + way[1], radius);
      check(sweep, all, ax, ay, way, radius, false, "all, trial " + trial);
      int fresh = sweep.fresh(ax, ay, ax + way[0], ay + way[1], radius);
      check(sweep, fresh, ax, ay, way, radius, true, "fresh, trial " + trial);
    }
  }

  /** Slanted ways, some along the axes, some of no length, some shorter than the lattice's step. */
  private static double[] way(Random random, int trial) {
    double dx = 3 * (random.nextDouble() - 0.5);
    double dy = 3 * (random.nextDouble() - 0.5);
    return switch (trial % 5) {
      case 0 -> new double[] {dx, 0};
      case 1 -> new double[] {0, dy};
      case 2 -> trial % 2 == 0 ? new double[] {0, 0} : new double[] {dx * 1e-3, dy * 1e-3};
      default -> new double[] {dx, dy};
    };
  }

  private static void check(
      Sweep sweep,
      int found,
      double ax,
      double ay,
      double[] way,
      double radius,
      boolean fresh,
      String which) {
    int[] times = new int[LATTICE.size()];
    for (int r = 0; r < found; r += 2) {
      assertTrue(sweep.runs[r] <= sweep.runs[r + 1], which);
      for (int node = sweep.runs[r]; node <= sweep.runs[r + 1]; node++) {
        times[node]++;
      }
    }
    for (int node = 0; node < times.length; node++) {
      double px = LATTICE.x(node % LATTICE.columns()) - ax;
      double py = LATTICE.y(node / LATTICE.columns()) - ay;
      double squared = way[0] * way[0] + way[1] * way[1];
      double t = squared == 0 ? 0 : (px * way[0] + py * way[1]) / squared;
      t = Math.max(0, Math.min(1, t));
      double toLine = Math.hypot(px - t * way[0], py - t * way[1]);
      double toStart = Math.hypot(px, py);
      if (Math.abs(toLine - radius) > RIM_MM && Math.abs(toStart - radius) > RIM_MM) {
        boolean wanted = toLine < radius && !(fresh && toStart < radius);
        assertEquals(wanted ? 1 : 0, times[node], which + ", node " + node);
      }
    }
  }
}
