package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.LineSegment;

class SegmentBucketsTest {

  @Test
  void fill_listsEachItemWhereItSaysItIs() {
    SegmentBuckets buckets = new SegmentBuckets(0, 0, 100, 100, 50);
    int[] at = {buckets.bucketOf(0, 0), buckets.bucketOf(100, 100), buckets.bucketOf(0, 0)};
    assertTrue(at[1] < buckets.count());
    buckets.fill(3, (i, visitor) -> visitor.visit(at[i]));
    assertEquals(2, buckets.to(at[0]) - buckets.from(at[0]));
    assertEquals(0, buckets.item(buckets.from(at[0])));
    assertEquals(2, buckets.item(buckets.from(at[0]) + 1));
    assertEquals(1, buckets.item(buckets.from(at[1])));
  }

  @Test
  void visit_anyDirection_eachBucketOnce_noneBeyond() {
    SegmentBuckets buckets = new SegmentBuckets(0, 0, 300, 300, 900);
    int[][] segments = {{0, 300, 300, 0}, {300, 0, 0, 300}, {0, 0, 300, 0}, {7, 300, 7, 0}};
    for (int[] s : segments) {
      TreeSet<Integer> seen = new TreeSet<>();
      buckets.visit(
          s[0],
          s[1],
          s[2],
          s[3],
          bucket -> {
            assertTrue(bucket >= 0 && bucket < buckets.count(), "bucket " + bucket);
            assertTrue(seen.add(bucket), "bucket " + bucket + " twice");
          });
      assertTrue(seen.contains(buckets.bucketOf(s[0], s[1])));
      assertTrue(seen.contains(buckets.bucketOf(s[2], s[3])));
    }
  }

  /** What noding rests on: segments that come within one unit of each other share a bucket. */
  @Test
  void segmentsThatComeNear_shareABucket() {
    int near = 0;
    for (long seed = 0; seed < 30; seed++) {
      Random random = new Random(seed);
      int[][] s = new int[40][];
      for (int i = 0; i < s.length; i++) {
        int x = random.nextInt(2000);
        int y = random.nextInt(2000);
        int reach = i % 4 == 0 ? 1500 : 60;
        s[i] = new int[] {x, y, x + random.nextInt(reach), y + random.nextInt(reach) - reach / 2};
      }
      SegmentBuckets buckets = new SegmentBuckets(0, -800, 3600, 2800, 400);
      for (int i = 0; i < s.length; i++) {
        TreeSet<Integer> own = visited(buckets, s[i]);
        for (int k = 0; k < i; k++) {
          double apart =
              new LineSegment(s[i][0], s[i][1], s[i][2], s[i][3])
                  .distance(new LineSegment(s[k][0], s[k][1], s[k][2], s[k][3]));
          if (apart <= 1) {
            near++;
            TreeSet<Integer> shared = visited(buckets, s[k]);
            shared.retainAll(own);
            assertTrue(!shared.isEmpty(), "seed " + seed + ", segments " + i + " and " + k);
          }
        }
      }
    }
    assertTrue(near > 100, near + " near");
  }

  private static TreeSet<Integer> visited(SegmentBuckets buckets, int[] s) {
    TreeSet<Integer> out = new TreeSet<>();
    buckets.visit(s[0], s[1], s[2], s[3], out::add);
    return out;
  }
}
