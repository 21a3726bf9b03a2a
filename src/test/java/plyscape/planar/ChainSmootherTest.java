package plyscape.planar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

class ChainSmootherTest {

  private static final int CELL = 100;

  /** Cells of two classes in a box: a map of the sides between them, along the cells. */
  private static PlanarMap map(boolean[][] cells) {
    Linework lines = new Linework(2);
    int rows = cells.length;
    int columns = cells[0].length;
    box(lines, 0, 0, 0, columns, rows);
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        if (cells[r][c]) {
          box(lines, 1, c, r, c + 1, r + 1);
        }
      }
    }
    return PlanarMap.of(lines);
  }

  private static void box(Linework lines, int component, int c0, int r0, int c1, int r1) {
    int x0 = c0 * CELL;
    int x1 = c1 * CELL;
    int y0 = r0 * CELL;
    int y1 = r1 * CELL;
    lines.add(new int[] {x0, x1, x1, x0, x0}, new int[] {y0, y0, y1, y1, y0}, component, 1, false);
  }

  private static Chain inner(List<Chain> chains) {
    return chains.stream().filter(c -> c.left() != 0 && c.right() != 0).findFirst().orElseThrow();
  }

  @Test
  void none_isNone() {
    assertEquals(List.of(), ChainSmoother.smooth(List.of(), CELL));
  }

  /** Stairs at 45 degrees: their mean is the straight line that cuts all steps in half. */
  @Test
  void stairs_becomeStraight_awayFromTheirEnds() {
    int n = 24;
    boolean[][] cells = new boolean[n][n];
    for (int r = 0; r < n; r++) {
      for (int c = 0; c < n; c++) {
        cells[r][c] = c <= r;
      }
    }
    Chain chain = inner(ChainSmoother.smooth(map(cells).chains(), CELL));
    int seen = 0;
    for (int i = 0; i <= chain.last(); i++) {
      if (chain.x[i] > 6 * CELL && chain.x[i] < (n - 6) * CELL) {
        // Steps lie to the lower right of y = x and its parallel by a cell; the mean is half-way.
        assertEquals(0.5 * CELL, chain.x[i] - chain.y[i], 0.06 * CELL);
        seen++;
      }
    }
    assertTrue(seen > 20, seen + " points");
  }

  @Test
  void ends_sides_andTheOutsidesBorder_stay() {
    PlanarMap map = map(random(5));
    List<Chain> out = ChainSmoother.smooth(map.chains(), CELL);
    assertEquals(map.chains().size(), out.size());
    for (int c = 0; c < out.size(); c++) {
      Chain before = map.chains().get(c);
      Chain after = out.get(c);
      assertEquals(before.x[0], after.x[0]);
      assertEquals(before.y[0], after.y[0]);
      assertEquals(before.x[before.last()], after.x[after.last()]);
      assertEquals(before.left(), after.left());
      assertEquals(before.right(), after.right());
      if (before.left() == 0 || before.right() == 0) {
        assertEquals(before.length(), after.length(), 1e-6, "points are put in, none moves");
      }
    }
  }

  /** Areas stay to a hundredth of a cell or so; faces stay valid and still tile the box. */
  @Test
  void patches_keepTheirAreas_andStayAMap() {
    GeometryFactory factory = new GeometryFactory();
    for (long seed = 0; seed < 12; seed++) {
      PlanarMap map = map(random(seed));
      List<Chain> chains = ChainSmoother.smooth(map.chains(), CELL);
      PolygonAssembler before = new PolygonAssembler(map.chains(), map.faces(), CELL, factory);
      PolygonAssembler after = new PolygonAssembler(chains, map.faces(), CELL, factory);
      double sum = 0;
      for (int f = 1; f < map.faces(); f++) {
        int face = f;
        Polygon was = before.polygons(g -> g == face).get(0).polygon();
        Polygon is = after.polygons(g -> g == face).get(0).polygon();
        assertTrue(is.isValid(), "seed " + seed);
        assertEquals(was.getArea(), is.getArea(), 0.08 * was.getLength(), "seed " + seed);
        sum += is.getArea();
      }
      assertEquals(20 * 20, sum, 1e-6, "seed " + seed);
    }
  }

  /** A disc of 12 cells keeps its area, and its rim becomes a circle to half a cell. */
  @Test
  void disc_isRound() {
    int n = 30;
    boolean[][] cells = new boolean[n][n];
    int count = 0;
    for (int r = 0; r < n; r++) {
      for (int c = 0; c < n; c++) {
        cells[r][c] = Math.hypot(c + 0.5 - n / 2.0, r + 0.5 - n / 2.0) < 12;
        count += cells[r][c] ? 1 : 0;
      }
    }
    Chain rim = inner(ChainSmoother.smooth(map(cells).chains(), CELL));
    assertEquals(count, Math.abs(rim.cross2()) / 2.0 / CELL / CELL, 0.01 * count);
    double radius = Math.sqrt(count / Math.PI);
    for (int i = 0; i <= rim.last(); i++) {
      double far = Math.hypot(rim.x[i] - n / 2.0 * CELL, rim.y[i] - n / 2.0 * CELL) / CELL;
      assertEquals(radius, far, 0.5);
    }
    assertArrayEquals(
        new int[] {rim.x[0], rim.y[0]}, new int[] {rim.x[rim.last()], rim.y[rim.last()]});
  }

  private static boolean[][] random(long seed) {
    Random random = new Random(seed);
    boolean[][] out = new boolean[20][20];
    for (boolean[] row : out) {
      for (int c = 0; c < row.length; c++) {
        row[c] = random.nextInt(3) > 0;
      }
    }
    return out;
  }
}
