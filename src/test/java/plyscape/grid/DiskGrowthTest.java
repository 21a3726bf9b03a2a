package plyscape.grid;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against distances worked out pair by pair: a cell is grown to when some cell is near enough. */
class DiskGrowthTest {

  @Test
  void randomCells_asPairByPair() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      int columns = 1 + random.nextInt(40);
      int rows = 1 + random.nextInt(40);
      int squared = random.nextInt(120) - 1;
      boolean[] set = new boolean[columns * rows];
      double share = random.nextDouble() * random.nextDouble();
      for (int i = 0; i < set.length; i++) {
        set[i] = random.nextDouble() < share;
      }
      boolean[] wanted = new boolean[set.length];
      for (int i = 0; i < set.length; i++) {
        for (int k = 0; k < set.length && !wanted[i]; k++) {
          int dx = i % columns - k % columns;
          int dy = i / columns - k / columns;
          wanted[i] = set[k] && dx * dx + dy * dy <= squared;
        }
      }
      assertArrayEquals(wanted, DiskGrowth.of(set, columns, rows, squared), "seed " + seed);
    }
  }

  @Test
  void oneCell_becomesTheLatticePointsOfADisk() {
    // Gauss's circle problem: 81 lattice points within 5 of one (OEIS A000328).
    boolean[] set = new boolean[21 * 21];
    set[10 * 21 + 10] = true;
    int count = 0;
    for (boolean in : DiskGrowth.of(set, 21, 21, 25)) {
      count += in ? 1 : 0;
    }
    assertEquals(81, count);
  }
}
