package plyscape.bend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;

/** Values of references-2.md, section 9 (derived there unless said). */
class TopFaceTest {

  static TopReading at(double x, double y, double z) {
    return new TopReading(x, y, z, 1);
  }

  @Test
  void triangle_isAPlane_onItsEdgesToo() {
    TriangleTop top = new TriangleTop(List.of(at(0, 0, 10), at(4, 0, 14), at(0, 3, 16)));
    assertEquals(13, top.heightMm(1, 1), 1e-12);
    assertEquals(15, top.heightMm(2, 1.5), 1e-12);
    assertEquals(14, top.heightMm(9, -3), 1e-12, "nearest is a corner");
    assertEquals(12, top.heightMm(2, -5), 1e-12, "nearest is on an edge");
    assertFalse(top.holds(2, -0.01));
  }

  @Test
  void square_withAPointInside_fourTriangles() {
    List<TopReading> readings =
        List.of(at(0, 0, 0), at(10, 0, 10), at(10, 10, 20), at(0, 10, 10), at(4, 5, 12));
    TriangleTop top = new TriangleTop(readings);
    double[][] expected = {{2, 2, 5.2}, {5, 5, 12.5}, {7, 5, 13.5}, {5, 8, 14.2}, {8, 2, 11}};
    for (double[] e : expected) {
      assertEquals(e[2], top.heightMm(e[0], e[1]), 1e-12);
    }
    TopMap map = TopMap.of("t", readings, 0.02);
    // Only the inner one can be left out: the plane of the corners has 9 there.
    assertEquals(3, map.leftOutRmsMm().orElseThrow(), 1e-12);
    assertEquals(Math.hypot(3, 0.02), map.flatnessMm(), 1e-12);
  }

  @Test
  void threeReadings_nothingCanBeLeftOut() {
    TopMap map = TopMap.of("t", List.of(at(0, 0, 0), at(9, 0, 1), at(0, 9, 2)), 0.02);
    assertTrue(map.leftOutRmsMm().isEmpty());
    assertEquals(0.02, map.flatnessMm());
  }

  /** A cell at a quarter turn of a published example, and others. */
  @Test
  void grid_isBilinear() {
    TopFace cell = GridTop.of(List.of(at(0, 0, 1), at(1, 0, 2), at(0, 1, 3), at(1, 1, 5)));
    assertEquals(2.375, cell.heightMm(0.25, 0.5), 1e-12);
    TopFace other = GridTop.of(List.of(at(0, 0, 10), at(1, 0, 20), at(0, 1, 30), at(1, 1, 60)));
    assertEquals(28.6, other.heightMm(0.3, 0.6), 1e-12);
    TopFace saddle = GridTop.of(List.of(at(0, 0, 0), at(1, 0, 1), at(0, 1, 1), at(1, 1, 0)));
    assertEquals(0.5, saddle.heightMm(0.5, 0.5), 1e-12);
    assertEquals(1, saddle.heightMm(7, -2), 1e-12, "beyond: the nearest corner");
    assertEquals(0.25, saddle.heightMm(0.25, -2), 1e-12, "beyond: the nearest of an edge");
  }

  @Test
  void grid_onlyIfAllNodesAreThere() {
    List<TopReading> nodes = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      nodes.add(at(i % 4 * 20 + 0.004 * (i % 3), i / 4 * 30, i));
    }
    assertTrue(GridTop.of(nodes) != null);
    assertNull(GridTop.of(nodes.subList(0, 11)));
    nodes.set(5, at(20.02, 30, 5));
    assertNull(GridTop.of(nodes));
  }

  /**
   * Empty circles, a plane reproduced, data met, triangle count 2 n - 2 - h; any order of points.
   */
  @Test
  void delaunay_properties_onRandomPlaces() {
    for (int seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      List<TopReading> readings = new ArrayList<>();
      int n = 4 + random.nextInt(40);
      for (int i = 0; i < n; i++) {
        double x = random.nextInt(3) == 0 ? random.nextInt(5) * 50 : 240 * random.nextDouble();
        double y = random.nextInt(3) == 0 ? random.nextInt(5) * 50 : 240 * random.nextDouble();
        if (readings.stream().noneMatch(r -> r.x() == x && r.y() == y)) {
          readings.add(at(x, y, 1 + 0.01 * x - 0.02 * y));
        }
      }
      Delaunay all = delaunay(readings);
      String what = "seed " + seed;
      assertEquals(2 * readings.size() - 2 - all.hull().size(), all.triangles().size(), what);
      all.triangles().forEach(t -> assertEmpty(t, readings, what));
      TriangleTop top = new TriangleTop(readings);
      for (TopReading r : readings) {
        assertEquals(r.z(), top.heightMm(r.x(), r.y()), 1e-9, what);
      }
      List<TopReading> shuffled = new ArrayList<>(readings);
      Collections.shuffle(shuffled, random);
      TriangleTop other = new TriangleTop(shuffled);
      for (int i = 0; i < 50; i++) {
        double x = 260 * random.nextDouble() - 10;
        double y = 260 * random.nextDouble() - 10;
        assertEquals(top.heightMm(x, y), other.heightMm(x, y), 1e-9, what);
        if (top.holds(x, y)) {
          assertEquals(1 + 0.01 * x - 0.02 * y, top.heightMm(x, y), 1e-9, what);
        }
      }
    }
  }

  /** Of four on a circle the diagonal from the leftmost, lowest is taken. */
  @Test
  void onOneCircle_sameDiagonalWhateverTheOrder() {
    List<TopReading> square =
        new ArrayList<>(List.of(at(0, 0, 0), at(1, 0, 1), at(1, 1, 7), at(0, 1, 3)));
    for (int i = 0; i < 4; i++) {
      assertEquals(3.5, new TriangleTop(square).heightMm(0.5, 0.5), 1e-12);
      Collections.rotate(square, 1);
    }
  }

  /** Inner node of a regular grid: the mean of its two neighbours in X. */
  @Test
  void leftOut_ofAGrid() {
    List<TopReading> nodes = new ArrayList<>();
    double[] bump = {0, 0, 0, 0, 1, 0, 0, 0, 0};
    for (int i = 0; i < 9; i++) {
      nodes.add(at(i % 3 * 50, i / 3 * 50, bump[i]));
    }
    // The middle is 1 off, the middles of the sides 0; corners can't be told.
    assertEquals(Math.sqrt(1.0 / 5), TopMap.of("t", nodes, 0).leftOutRmsMm().orElseThrow(), 1e-12);
  }

  /** The neighbours of a grid's nodes are told from its lines, faster than by triangulating it. */
  @Test
  void leftOut_ofAGrid_asByItsTriangles() {
    List<TopReading> grid = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      double x = 20 * (i % 6);
      double y = 30 * (i / 6);
      grid.add(new TopReading(x, y, Math.sin(0.7 * i) / 10, i + 2));
    }
    // Off the lines by less than they are apart from another line, but no grid any more.
    List<TopReading> nearly = new ArrayList<>(grid);
    TopReading r = nearly.get(14);
    nearly.set(14, new TopReading(r.x() + 0.02, r.y() + 0.02, r.z(), r.line()));
    assertEquals(
        TopMap.of("t", nearly, 0).leftOutRmsMm().getAsDouble(),
        TopMap.of("t", grid, 0).leftOutRmsMm().getAsDouble(),
        2e-3);
    // A chip of 0.5 mm under the tip at one place.
    assertTrue(TopMap.of("t", grid, 0).outlier().isEmpty());
    grid.replaceAll(p -> new TopReading(p.x(), p.y(), p.z() / 4, p.line()));
    TopReading chip = grid.get(14);
    grid.set(14, new TopReading(chip.x(), chip.y(), chip.z() + 0.5, chip.line()));
    String words = TopMap.of("t", grid, 0).outlier().orElseThrow();
    assertTrue(words.contains("at (40, 60), line 16, is 0.5"), words);
  }

  @Test
  void shareBeyond_ofAHalfCoveredArea() {
    TopMap map =
        TopMap.of("t", List.of(at(0, 0, 0), at(50, 0, 0), at(0, 100, 0), at(50, 100, 0)), 0);
    assertEquals(0.5, map.shareBeyond(new Box(0, 0, 100, 100)), 1e-12);
  }

  private static Delaunay delaunay(List<TopReading> readings) {
    return new Delaunay(
        readings.stream().mapToDouble(TopReading::x).toArray(),
        readings.stream().mapToDouble(TopReading::y).toArray());
  }

  private static void assertEmpty(int[] corners, List<TopReading> readings, String what) {
    TopReading a = readings.get(corners[0]);
    TopReading b = readings.get(corners[1]);
    TopReading c = readings.get(corners[2]);
    double d = 2 * (a.x() * (b.y() - c.y()) + b.x() * (c.y() - a.y()) + c.x() * (a.y() - b.y()));
    double aa = a.x() * a.x() + a.y() * a.y();
    double bb = b.x() * b.x() + b.y() * b.y();
    double cc = c.x() * c.x() + c.y() * c.y();
    double ux = (aa * (b.y() - c.y()) + bb * (c.y() - a.y()) + cc * (a.y() - b.y())) / d;
    double uy = (aa * (c.x() - b.x()) + bb * (a.x() - c.x()) + cc * (b.x() - a.x())) / d;
    double radius = Math.hypot(a.x() - ux, a.y() - uy);
    for (TopReading r : readings) {
      assertTrue(Math.hypot(r.x() - ux, r.y() - uy) >= radius * (1 - 1e-6), what);
    }
  }
}
