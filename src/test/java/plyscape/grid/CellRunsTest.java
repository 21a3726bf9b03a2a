package plyscape.grid;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against distances worked out pair by pair: a cell is grown to when some cell is near enough. */
class CellRunsTest {

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
      assertArrayEquals(
          wanted,
          cells(CellRuns.of(set, columns, rows).grown(squared), set.length),
          "seed " + seed);
    }
  }

  @Test
  void oneCell_becomesTheLatticePointsOfADisk() {
    // Gauss's circle problem: 81 lattice points within 5 of one (OEIS A000328).
    boolean[] set = new boolean[21 * 21];
    set[10 * 21 + 10] = true;
    int count = 0;
    for (boolean in : cells(CellRuns.of(set, 21, 21).grown(25), set.length)) {
      count += in ? 1 : 0;
    }
    assertEquals(81, count);
  }

  @Test
  void cells_areThoseSet() {
    Random random = new Random(5);
    for (int trial = 0; trial < 60; trial++) {
      int columns = 1 + random.nextInt(9);
      boolean[] set = new boolean[3 * columns];
      for (int i = 0; i < set.length; i++) {
        set[i] = random.nextInt(3) < trial % 4;
      }
      assertArrayEquals(set, cells(CellRuns.of(set, columns, 3), set.length));
    }
  }

  private static boolean[] cells(CellRuns runs, int size) {
    byte[] values = new byte[size];
    runs.fill(values, (byte) 7);
    boolean[] cells = new boolean[size];
    for (int i = 0; i < size; i++) {
      assertTrue(values[i] == 0 || values[i] == 7);
      cells[i] = values[i] == 7;
    }
    return cells;
  }
}
