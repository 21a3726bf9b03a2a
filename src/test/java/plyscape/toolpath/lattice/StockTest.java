package plyscape.toolpath.lattice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;

class StockTest {

  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 20, 20), 0.75);

  /** One cut: a line, a radius and a depth. */
  private record Line(double ax, double ay, double bx, double by, double radius, double depth) {

    Line narrower(double mm) {
      return new Line(ax, ay, bx, by, radius - mm, depth);
    }

    double distance(double x, double y) {
      double dx = bx - ax;
      double dy = by - ay;
      double squared = dx * dx + dy * dy;
      double t = squared == 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / squared;
      t = Math.max(0, Math.min(1, t));
      return Math.hypot(ax + t * dx - x, ay + t * dy - y);
    }
  }

  /** Depth at a place after all cuts, exactly. */
  private static double truth(List<Line> cuts, double x, double y) {
    return cuts.stream()
        .filter(c -> c.distance(x, y) <= c.radius())
        .mapToDouble(Line::depth)
        .max()
        .orElse(0);
  }

  /** Chains of lines at depths that rise and fall, some by disks alone. */
  private static List<Line> cuts(Random random, Stock stock) {
    List<Line> cuts = new ArrayList<>();
    for (int chain = 0; chain < 12; chain++) {
      double radius = random.nextBoolean() ? 0.75 : 1.5;
      double depth = 1 + random.nextInt(4);
      double x = 4 + 12 * random.nextDouble();
      double y = 4 + 12 * random.nextDouble();
      stock.cutDisk(x, y, radius, depth);
      cuts.add(new Line(x, y, x, y, radius, depth));
      for (int k = 0; k < 8; k++) {
        double toX = Math.max(3, Math.min(17, x + 3 * (random.nextDouble() - 0.5)));
        double toY = Math.max(3, Math.min(17, y + 3 * (random.nextDouble() - 0.5)));
        stock.cut(x, y, toX, toY, radius, depth);
        cuts.add(new Line(x, y, toX, toY, radius, depth));
        x = toX;
        y = toY;
      }
    }
    return cuts;
  }

  /** Depth of the highest wood under a disk, by places 0.02 mm apart. */
  private static double highest(List<Line> cuts, double x, double y, double radius) {
    List<Line> near =
        cuts.stream().filter(cut -> cut.distance(x, y) <= cut.radius() + radius).toList();
    double least = Double.POSITIVE_INFINITY;
    for (double dx = -radius; dx <= radius; dx += 0.02) {
      for (double dy = -radius; dy <= radius; dy += 0.02) {
        if (dx * dx + dy * dy <= radius * radius) {
          least = Math.min(least, truth(near, x + dx, y + dy));
        }
      }
    }
    return least;
  }

  @Test
  void highestWood_isNeverMissed_andNotSeenWhereItIsFarFromTheDisk() {
    Random random = new Random(8);
    Stock stock = new Stock(LATTICE);
    List<Line> cuts = cuts(random, stock);
    List<Line> narrower = cuts.stream().map(cut -> cut.narrower(0.025)).toList();
    int slivers = 0;
    for (int trial = 0; trial < 150; trial++) {
      Line near = cuts.get(random.nextInt(cuts.size()));
      double x = near.bx() + 0.3 * random.nextGaussian();
      double y = near.by() + 0.3 * random.nextGaussian();
      double found = stock.highest(x, y, x, y, 0.75);
      double exact = highest(cuts, x, y, 0.75);
      assertTrue(found <= exact + 1e-5, trial + ": " + found + " where " + exact + " stands");
      // A part of 0.125 / 8 mm is cut when all of it is and touched when any is: 0.022 mm each.
      double least = highest(narrower, x, y, 0.75 + 0.045);
      assertTrue(found >= least - 1e-5, trial + ": " + found + " but no more than " + least);
      slivers += found < stock.at(x, y) ? 1 : 0;
    }
    assertTrue(slivers > 20, "only " + slivers + " places with wood at their edge");
  }

  @Test
  void slotCutToItsWidth_isClearToAFewHundredths() {
    Stock stock = new Stock(LATTICE);
    stock.cutDisk(4, 10, 0.75, 2);
    stock.cut(4, 10, 16, 10.7, 0.75, 2);
    // Nodes are 0.125 mm apart, and the edges of the slot run between them.
    assertEquals(2, stock.highest(6, 10 + 2 * 0.7 / 12, 10, 10 + 6 * 0.7 / 12, 0.70), 1e-6);
    assertEquals(0, stock.highest(6, 10 + 2 * 0.7 / 12, 10, 10 + 6 * 0.7 / 12, 0.751), 1e-6);
    assertEquals(2, stock.bitten(6, 10 + 2 * 0.7 / 12, 10, 10 + 6 * 0.7 / 12, 0.75), 1e-6);
  }

  @Test
  void sliverNarrowerThanTheLattice_isSeen() {
    Stock stock = new Stock(LATTICE);
    // Two slots side by side with 0.06 mm of wood between them, off the nodes' rows.
    double gap = 0.06;
    for (double y : new double[] {10.03 - gap / 2 - 0.75, 10.03 + gap / 2 + 0.75}) {
      stock.cutDisk(4, y, 0.75, 3);
      stock.cut(4, y, 16, y, 0.75, 3);
    }
    assertEquals(0, stock.highest(10, 10.03, 10, 10.03, 0.3), 1e-6);
    assertEquals(0, stock.bitten(8, 10.03, 12, 10.03, 0.75), 1e-6);
    stock.cutDisk(4, 10.03, 0.75, 1);
    stock.cut(4, 10.03, 16, 10.03, 0.75, 1);
    assertEquals(1, stock.highest(10, 10.03, 10, 10.03, 0.3), 1e-6);
  }

  @Test
  void copy_isCutByItself() {
    Stock stock = new Stock(LATTICE);
    stock.cutDisk(5, 5, 0.75, 1);
    stock.cut(5, 5, 8, 5, 0.75, 1);
    Stock copy = stock.copy();
    copy.cutDisk(8, 5, 0.75, 2);
    assertEquals(2, copy.highest(8, 5, 8, 5, 0.7), 1e-6);
    assertEquals(1, stock.highest(8, 5, 8, 5, 0.7), 1e-6);
  }
}
