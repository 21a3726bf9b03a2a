package plyscape.grid;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

class DistanceTransformTest {

  /** The 6 x 4 grid of references.md, section 6: sources (0,0) and (4,2) as (column, row). */
  @Test
  void workedGrid() {
    boolean[] source = new boolean[24];
    source[0] = true;
    source[2 * 6 + 4] = true;
    assertArrayEquals(
        new int[] {0, 1, 4, 5, 4, 5, 1, 2, 5, 2, 1, 2, 4, 5, 4, 1, 0, 1, 9, 10, 5, 2, 1, 2},
        DistanceTransform.squared(source, 6, 4));
  }

  @Test
  void noSource_isNoneEverywhere() {
    int[] near = DistanceTransform.squared(new boolean[12], 4, 3);
    assertTrue(Arrays.stream(near).allMatch(v -> v == DistanceTransform.NONE));
  }

  @Test
  void allSources_areZero() {
    boolean[] source = new boolean[35];
    Arrays.fill(source, true);
    int[] near = DistanceTransform.squared(source, 7, 5);
    for (int i = 0; i < 35; i++) {
      assertEquals(0, near[i]);
    }
  }

  /** Longest side allowed: the squares must not overflow. */
  @Test
  void longestRowAndColumn_stayExact() {
    int n = DistanceTransform.MAX_SIDE;
    boolean[] line = new boolean[n];
    line[0] = true;
    int far = (n - 1) * (n - 1);
    assertEquals(far, DistanceTransform.squared(line, n, 1)[n - 1]);
    assertEquals(far, DistanceTransform.squared(line, 1, n)[n - 1]);
    boolean[] two = new boolean[2 * n];
    two[0] = true;
    two[2 * n - 1] = true;
    assertEquals(1, DistanceTransform.squared(two, n, 2)[n]);
    assertEquals(1, DistanceTransform.squared(two, n, 2)[n - 1]);
  }

  @Test
  void sizesThatDontFit_areRefused() {
    assertThrows(
        IllegalArgumentException.class, () -> DistanceTransform.squared(new boolean[5], 2, 3));
    assertThrows(
        IllegalArgumentException.class, () -> DistanceTransform.squared(new boolean[0], 0, 3));
  }

  /** Against brute force, as integer distances must be equal; sparse to dense. */
  @Test
  void seededRandomGrids_equalBruteForce() {
    for (int seed = 0; seed < 300; seed++) {
      var random = new Random(seed);
      int columns = 1 + random.nextInt(40);
      int rows = 1 + random.nextInt(40);
      double density = Math.pow(random.nextDouble(), 3);
      boolean[] source = new boolean[columns * rows];
      for (int i = 0; i < source.length; i++) {
        source[i] = random.nextDouble() < density;
      }
      int[] near = DistanceTransform.squared(source, columns, rows);
      for (int i = 0; i < source.length; i++) {
        int best = DistanceTransform.NONE;
        for (int j = 0; j < source.length; j++) {
          if (source[j]) {
            best = Math.min(best, squared(i, j, columns));
          }
        }
        String where = "seed " + seed + ", cell " + i;
        assertEquals(best, near[i], where);
      }
    }
  }

  @Test
  void oneThreadOrFour_findTheSame() throws Exception {
    var random = new Random(7);
    boolean[] source = new boolean[1500 * 700];
    for (int i = 0; i < source.length; i++) {
      source[i] = random.nextInt(400) == 0;
    }
    int[] one = inPool(1, source);
    int[] four = inPool(4, source);
    assertArrayEquals(one, four);
  }

  private static int[] inPool(int threads, boolean[] source) throws Exception {
    var pool = new ForkJoinPool(threads);
    try {
      return pool.submit(() -> DistanceTransform.squared(source, 1500, 700)).get();
    } finally {
      pool.shutdown();
    }
  }

  private static int squared(int i, int j, int columns) {
    int dx = i % columns - j % columns;
    int dy = i / columns - j / columns;
    return dx * dx + dy * dy;
  }
}
