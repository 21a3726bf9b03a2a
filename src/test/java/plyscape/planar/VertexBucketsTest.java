package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class VertexBucketsTest {

  @Test
  void onePoint_isInBoxesThatTouchIt() {
    VertexBuckets buckets = new VertexBuckets(new int[] {5}, new int[] {7});
    assertFalse(buckets.none(5, 7, 5, 7, i -> true));
    assertFalse(buckets.none(-9, -9, 5, 7, i -> true));
    assertTrue(buckets.none(6, 7, 9, 9, i -> true));
    assertTrue(buckets.none(-100, -100, -50, -50, i -> true));
  }

  @Test
  void pointsThatFailTheTest_dontCount() {
    VertexBuckets buckets = new VertexBuckets(new int[] {0, 9}, new int[] {0, 9});
    assertTrue(buckets.none(0, 0, 9, 9, i -> i > 1));
    assertFalse(buckets.none(0, 0, 9, 9, i -> i == 1));
  }

  @Test
  void removed_isGone_othersOfItsBucketStay() {
    int[] x = {3, 3, 3, 3};
    int[] y = {4, 4, 4, 4};
    VertexBuckets buckets = new VertexBuckets(x, y);
    buckets.remove(1); // in the middle of the list
    assertTrue(buckets.none(3, 4, 3, 4, i -> i == 1));
    buckets.remove(3); // at its head
    assertFalse(buckets.none(3, 4, 3, 4, i -> i == 0));
    assertFalse(buckets.none(3, 4, 3, 4, i -> i == 2));
    buckets.remove(0);
    buckets.remove(2);
    assertTrue(buckets.none(0, 0, 9, 9, i -> true));
  }

  /** Against looking at every point; lines of points and swarms, with some taken out. */
  @Test
  void randomBoxes_areWhatLookingAtAllGives() {
    for (long seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      int n = 1 + random.nextInt(300);
      int[] x = random.ints(n, -500, 500).toArray();
      int[] y = seed % 3 == 0 ? new int[n] : random.ints(n, -50, 5000).toArray();
      VertexBuckets buckets = new VertexBuckets(x, y);
      boolean[] gone = new boolean[n];
      for (int i = 0; i < n; i += 3) {
        buckets.remove(i);
        gone[i] = true;
      }
      for (int k = 0; k < 200; k++) {
        int lowX = random.nextInt(1400) - 700;
        int lowY = random.nextInt(6000) - 500;
        int highX = lowX + random.nextInt(200);
        int highY = lowY + random.nextInt(700);
        boolean none = true;
        for (int i = 0; i < n; i++) {
          none &= gone[i] || x[i] < lowX || x[i] > highX || y[i] < lowY || y[i] > highY;
        }
        assertEquals(none, buckets.none(lowX, lowY, highX, highY, i -> true), "seed " + seed);
      }
    }
  }
}
