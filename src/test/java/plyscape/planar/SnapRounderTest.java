package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;

class SnapRounderTest {

  /** What comes out of segments given as x0 y0 x1 y1: of each the points that it is led through. */
  private static List<String> noded(int[]... segments) {
    List<String> out = new ArrayList<>();
    pieces(segments)
        .forEach(
            trail -> {
              StringBuilder text = new StringBuilder();
              trail.forEach(p -> text.append(p[0]).append(' ').append(p[1]).append(", "));
              out.add(text.substring(0, text.length() - 2));
            });
    return out;
  }

  private static List<List<int[]>> pieces(int[]... segments) {
    int n = segments.length;
    int[][] ends = new int[4][n];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 4; k++) {
        ends[k][i] = segments[i][k];
      }
    }
    SnapRounder rounder = new SnapRounder(ends[0], ends[1], ends[2], ends[3], n);
    List<List<int[]>> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      out.add(new ArrayList<>(List.of(new int[] {segments[i][0], segments[i][1]})));
    }
    LongIds vertices = rounder.vertices();
    rounder.run(
        (segment, from, to) -> {
          List<int[]> trail = out.get(segment);
          int[] last = trail.get(trail.size() - 1);
          assertEquals(last[0], vertices.high(from), "pieces follow each other");
          assertEquals(last[1], vertices.low(from), "pieces follow each other");
          trail.add(new int[] {vertices.high(to), vertices.low(to)});
        });
    return out;
  }

  private static int[] s(int... ends) {
    return ends;
  }

  @Test
  void apart_stayAsTheyAre() {
    assertEquals(List.of("0 0, 9 0", "0 5, 9 5"), noded(s(0, 0, 9, 0), s(0, 5, 9, 5)));
  }

  @Test
  void crossOnAGridPoint_meetThere() {
    assertEquals(List.of("0 0, 2 2, 4 4", "0 4, 2 2, 4 0"), noded(s(0, 0, 4, 4), s(0, 4, 4, 0)));
  }

  @Test
  void crossBetweenGridPoints_meetInTheNearest() {
    assertEquals(
        List.of("0 0, 3 1, 10 4", "3 -5, 3 1, 3 9"), noded(s(0, 0, 10, 4), s(3, -5, 3, 9)));
  }

  @Test
  void crossInACornerOfSquares_meetInTheUpperRight() {
    assertEquals(
        List.of("0 0, 1 1", "0 1, 1 1, 1 0"),
        noded(s(0, 0, 1, 1), s(0, 1, 1, 0)),
        "(0.5, 0.5) belongs to the square of (1, 1), and the second line is led there");
  }

  @Test
  void endTouchesTheMiddle_isANode() {
    assertEquals(List.of("0 0, 4 0, 9 0", "4 0, 4 7"), noded(s(0, 0, 9, 0), s(4, 0, 4, 7)));
  }

  @Test
  void passesNearAnEnd_isLedThroughIt() {
    assertEquals(
        List.of("0 0, 50 0, 100 1", "50 0, 50 -9"), noded(s(0, 0, 100, 1), s(50, 0, 50, -9)));
  }

  @Test
  void lieOnEachOther_shareTheirPoints() {
    assertEquals(List.of("0 0, 3 0, 9 0", "3 0, 9 0, 12 0"), noded(s(0, 0, 9, 0), s(3, 0, 12, 0)));
    assertEquals(List.of("0 0, 6 3", "6 3, 0 0"), noded(s(0, 0, 6, 3), s(6, 3, 0, 0)));
  }

  @Test
  void threeThroughOneSquare_meetInItsMiddle() {
    assertEquals(
        List.of("0 0, 5 5, 10 10", "0 10, 5 5, 10 0", "0 5, 5 5, 30 6"),
        noded(s(0, 0, 10, 10), s(0, 10, 10, 0), s(0, 5, 30, 6)));
  }

  @Test
  void none_isNothing() {
    assertEquals(List.of(), noded());
  }

  /**
   * What is promised of any input: pieces meet only in their ends, and nothing has moved by more
   * than half a square's diagonal.
   */
  @Test
  void tangles_meetOnlyInEnds_andStayNear() {
    for (long seed = 0; seed < 40; seed++) {
      int[][] segments = tangle(new Random(seed), 30, 40);
      List<List<int[]>> trails = pieces(segments);
      TreeSet<String> edges = new TreeSet<>();
      for (int i = 0; i < segments.length; i++) {
        int[] s = segments[i];
        LineSegment line = new LineSegment(s[0], s[1], s[2], s[3]);
        List<int[]> trail = trails.get(i);
        for (int[] p : trail) {
          double far = line.distance(new Coordinate(p[0], p[1]));
          assertTrue(far <= Math.sqrt(0.5) + 1e-9, "seed " + seed + ": moved by " + far);
        }
        edges.addAll(edges(trail));
      }
      meetOnlyInEnds(edges, "seed " + seed);
    }
  }

  /**
   * The library's noder of the same rounding, as another way. It finds crossings in doubles, so
   * that one on a square's side may fall to either, and a line through nothing but a square's
   * corner passes it there: tangles with such are left out.
   */
  @Test
  void tangles_areWhatJtsGives() {
    int compared = 0;
    for (long seed = 100; seed < 800; seed++) {
      int[][] segments = tangle(new Random(seed), 8, 25);
      if (crossesOnASide(segments) || throughACorner(segments)) {
        continue;
      }
      compared++;
      TreeSet<String> ours = new TreeSet<>();
      pieces(segments).forEach(trail -> ours.addAll(edges(trail)));
      List<SegmentString> lines = new ArrayList<>();
      for (int[] s : segments) {
        lines.add(
            new NodedSegmentString(
                new Coordinate[] {new Coordinate(s[0], s[1]), new Coordinate(s[2], s[3])}, null));
      }
      SnapRoundingNoder noder = new SnapRoundingNoder(new PrecisionModel(1));
      noder.computeNodes(lines);
      TreeSet<String> theirs = new TreeSet<>();
      for (Object string : noder.getNodedSubstrings()) {
        List<int[]> trail = new ArrayList<>();
        for (Coordinate c : ((SegmentString) string).getCoordinates()) {
          trail.add(new int[] {(int) c.x, (int) c.y});
        }
        theirs.addAll(edges(trail));
      }
      TreeSet<String> both = new TreeSet<>(ours);
      both.retainAll(theirs);
      ours.removeAll(both);
      theirs.removeAll(both);
      assertEquals(theirs, ours, "seed " + seed);
    }
    assertTrue(compared > 20, compared + " compared");
  }

  private static boolean crossesOnASide(int[][] segments) {
    for (int[] s : segments) {
      for (int[] t : segments) {
        Coordinate c =
            new LineSegment(s[0], s[1], s[2], s[3])
                .intersection(new LineSegment(t[0], t[1], t[2], t[3]));
        if (c != null && (onASide(c.x) || onASide(c.y))) {
          return true;
        }
      }
    }
    return false;
  }

  /** Half-way between two of its grid points. */
  private static boolean throughACorner(int[][] segments) {
    for (int[] s : segments) {
      int dx = Math.abs(s[2] - s[0]);
      int dy = Math.abs(s[3] - s[1]);
      int parts = BigInteger.valueOf(dx).gcd(BigInteger.valueOf(dy)).intValue();
      if (dx / parts % 2 == 1 && dy / parts % 2 == 1) {
        return true;
      }
    }
    return false;
  }

  private static boolean onASide(double value) {
    return Math.abs(value - Math.floor(value) - 0.5) < 1e-9;
  }

  private static int[][] tangle(Random random, int count, int size) {
    int[][] out = new int[count][];
    for (int i = 0; i < count; i++) {
      do {
        out[i] = random.ints(4, 0, size).toArray();
      } while (out[i][0] == out[i][2] && out[i][1] == out[i][3]);
    }
    return out;
  }

  private static List<String> edges(List<int[]> trail) {
    List<String> out = new ArrayList<>();
    for (int i = 0; i + 1 < trail.size(); i++) {
      int[] a = trail.get(i);
      int[] b = trail.get(i + 1);
      boolean swap = a[0] > b[0] || a[0] == b[0] && a[1] > b[1];
      int[] p = swap ? b : a;
      int[] q = swap ? a : b;
      out.add(p[0] + " " + p[1] + " " + q[0] + " " + q[1]);
    }
    return out;
  }

  private static void meetOnlyInEnds(TreeSet<String> edges, String message) {
    List<LineSegment> list = new ArrayList<>();
    for (String edge : edges) {
      String[] n = edge.split(" ");
      list.add(
          new LineSegment(
              Integer.parseInt(n[0]),
              Integer.parseInt(n[1]),
              Integer.parseInt(n[2]),
              Integer.parseInt(n[3])));
    }
    org.locationtech.jts.algorithm.RobustLineIntersector cut =
        new org.locationtech.jts.algorithm.RobustLineIntersector();
    for (int i = 0; i < list.size(); i++) {
      for (int k = 0; k < i; k++) {
        LineSegment a = list.get(i);
        LineSegment b = list.get(k);
        cut.computeIntersection(a.p0, a.p1, b.p0, b.p1);
        assertTrue(
            !cut.hasIntersection() || !cut.isInteriorIntersection(),
            message + ": " + a + " and " + b);
      }
    }
  }
}
