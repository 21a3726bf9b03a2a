package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;

class TargetsTest {

  static double[] square(double x0, double y0, double x1, double y1) {
    return new double[] {x0, y0, x1, y0, x1, y1, x0, y1};
  }

  private static double area(short[] cells, int target, CellFrame frame) {
    int n = 0;
    for (short c : cells) {
      n += c == target ? 1 : 0;
    }
    return n * frame.cellX() * frame.cellY();
  }

  @Test
  void evenOdd_holesAndIslands() { // references.md section 2: 64, and 68 with the island
    CellFrame frame = new CellFrame(0, 0, 0.1, 0.1, 120, 120);
    double[] outer = square(0, 0, 10, 10);
    double[] hole = square(2, 2, 8, 8);
    double[] island = square(4, 4, 6, 6);
    assertEquals(
        64,
        area(
            TargetRaster.of(frame, List.of(new Target(1, 1, new double[][] {outer, hole}))),
            0,
            frame),
        1e-9);
    assertEquals(
        68,
        area(
            TargetRaster.of(frame, List.of(new Target(1, 1, new double[][] {outer, hole, island}))),
            0,
            frame),
        1e-9);
  }

  @Test
  void neighbours_shareCentresOnTheirEdgeWithoutGapOrOverlap() {
    CellFrame frame = new CellFrame(0, 0, 0.5, 0.5, 40, 40);
    // The common outline runs through cell centres (quarters), upright, level and diagonal.
    double[] left = {0, 0, 5.25, 0, 5.25, 5.25, 10.25, 10.25, 12.25, 10.25, 12.25, 20, 0, 20};
    double[] right = {5.25, 0, 20, 0, 20, 20, 12.25, 20, 12.25, 10.25, 10.25, 10.25, 5.25, 5.25};
    short[] a = TargetRaster.of(frame, List.of(new Target(1, 1, new double[][] {left})));
    short[] b = TargetRaster.of(frame, List.of(new Target(1, 1, new double[][] {right})));
    for (int i = 0; i < a.length; i++) {
      assertTrue(a[i] + b[i] == -1, "cell " + i + ": " + a[i] + " and " + b[i]);
    }
  }

  @Test
  void walls_knowBothSides() {
    Target shallow = new Target(2, 1, new double[][] {square(0, 0, 10, 10)});
    Target deep = new Target(3, 2, new double[][] {square(10, 0, 20, 10)});
    Walls walls = new Walls(new Box(0, 0, 30, 30), List.of(shallow, deep));
    assertEquals(
        2,
        walls.wallDistance(12, 5, 9, 2),
        1e-12); // the step between the two is a wall of the deeper pocket
    assertEquals(
        5, walls.wallDistance(12, 5, 9, 1), 1e-12); // but not of the pocket that holds both
    assertTrue(walls.wallDistance(12, 5, 1.5, 2) > 1.5);
    assertTrue(walls.deeperWithin(9.98, 5, 0.0201, 1.99));
    assertTrue(!walls.deeperWithin(9.97, 5, 0.0201, 1.99));
    assertTrue(
        !walls.deeperWithin(0.01, 5, 0.0201, 1.99)); // near an edge, but not of anything that deep
    assertEquals(8, walls.distanceToDepth(2, 5, 1.5), 1e-12);
  }

  @Test
  void cellDistance_workedGrid() { // references.md section 6, squared distances
    CellFrame frame = new CellFrame(0, 0, 1, 1, 6, 4);
    float[] d = new CellDistance(frame).from(i -> i == 0 || i == 2 * 6 + 4);
    double[] squared = new double[24];
    for (int i = 0; i < 24; i++) {
      squared[i] = Math.rint(d[i] * d[i]);
    }
    assertArrayEquals(
        new double[] {0, 1, 4, 5, 4, 5, 1, 2, 5, 2, 1, 2, 4, 5, 4, 1, 0, 1, 9, 10, 5, 2, 1, 2},
        squared);
  }

  private static double unreachable(double[] ring, double radius, double cell) {
    Box panel = new Box(0, 0, 50, 40);
    List<Target> targets = List.of(new Target(2, 1, new double[][] {ring}));
    CellFrame frame = HeightField.uncut(panel, cell).frame();
    short[] cells = TargetRaster.of(frame, targets);
    PocketReach reach = new PocketReach(frame, cells, new double[] {1}, new Walls(panel, targets));
    reach.turnTo(1, radius);
    int n = 0;
    for (int i = 0; i < cells.length; i++) {
      n += cells[i] == 0 && !reach.reaches(i % frame.columns(), i / frame.columns(), false) ? 1 : 0;
    }
    return n * frame.cellX() * frame.cellY();
  }

  /**
   * Never less than is really lost; at most half a cell's diagonal more along the round of each
   * corner.
   */
  private static void assertLost(double exact, double rounds, double found) {
    assertTrue(
        found > exact - 0.1 && found < exact + 0.1 + rounds * 0.071, found + " for " + exact);
  }

  @Test
  void
      reach_rectangleLosesItsCorners() { // references.md section 6: (4 - pi) r^2 = 7.7257 for r = 3
    assertLost(
        7.7257,
        0,
        unreachable(square(5, 5, 45, 35), 3, 0.1)); // cell edges on the walls: no rounding
  }

  @Test
  void reach_sharpCorner() { // a corner of 60 degrees loses 0.6849 r^2; an equilateral triangle has
    // three
    double h = 30 * Math.sqrt(3) / 2;
    double rounds = 3 * 2 * Math.toRadians(120);
    assertLost(3 * 0.6849 * 4, rounds, unreachable(new double[] {10, 5, 40, 5, 25, 5 + h}, 2, 0.1));
  }

  @Test
  void reach_stripAsWideAsTheCutter() {
    // Exactly the diameter, with its middle between the rows of cell centres: all but the ends'
    // corners is reached.
    double corners = (4 - Math.PI) * 1.5 * 1.5;
    assertEquals(corners, unreachable(square(5, 10, 45, 13), 1.5, 0.1), 0.15);
    // A hair narrower: nothing.
    assertEquals(40 * 2.98, unreachable(square(5, 10, 45, 12.98), 1.5, 0.1), 0.9);
  }
}
