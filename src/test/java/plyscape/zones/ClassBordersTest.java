package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.ClassGrid;

/** Smooth borders held against counts of cells, formulas, and JTS's coverage validator. */
class ClassBordersTest {

  private static ClassGrid grid(int columns, int rows, DoubleBinaryOperator kind) {
    double[] values = new double[columns * rows];
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        values[r * columns + c] = kind.applyAsDouble(c + 0.5, r + 0.5) + 0.0;
      }
    }
    return new ClassGrid("made", "", new double[] {0, 1, 0, 0, 0, 1}, columns, rows, values);
  }

  private static double area(List<Polygon> polygons) {
    return polygons.stream().mapToDouble(Geometry::getArea).sum();
  }

  /** A half-plane's border across the cells at a slope: cells' corners are up to 0.7 from it. */
  @Test
  void obliqueBorder_isNearlyStraight() {
    for (double slope : new double[] {0.1, 0.3, 0.5, 0.8, 0.93}) {
      ClassGrid grid = grid(60, 60, (x, y) -> y < 10 + slope * x ? 1 : 2);
      for (Polygon polygon : new ClassBorders(grid).polygons(Set.of(1.0))) {
        for (Coordinate c : polygon.getCoordinates()) {
          if (c.x > 10 && c.x < 40 && c.y > 1 && c.y < 50) {
            double off = (c.y - 10 - slope * c.x) / Math.hypot(1, slope);
            assertTrue(Math.abs(off) < 0.3, "slope " + slope + ": " + off + " cells off at " + c);
          }
        }
      }
    }
  }

  /** Disc: its own outline within half a cell, no sharp bend left, the area that of its cells. */
  @Test
  void disc_isRound() {
    ClassGrid grid = grid(40, 40, (x, y) -> Math.hypot(x - 20.3, y - 19.8) < 9 ? 5 : 3);
    List<Polygon> disc = new ClassBorders(grid).polygons(Set.of(5.0));
    assertEquals(1, disc.size());
    long cells = java.util.Arrays.stream(grid.values()).filter(v -> v == 5).count();
    assertEquals(cells, disc.get(0).getArea(), 0.001 * cells);
    Coordinate[] ring = disc.get(0).getExteriorRing().getCoordinates();
    for (int i = 1; i + 1 < ring.length; i++) {
      assertEquals(9, Math.hypot(ring[i].x - 20.3, ring[i].y - 19.8), 0.5);
      double turn =
          org.locationtech.jts.algorithm.Angle.angleBetweenOriented(
              ring[i - 1], ring[i], ring[i + 1]);
      assertTrue(Math.abs(Math.abs(turn) - Math.PI) < 0.5, "a corner at " + ring[i]);
    }
  }

  /** Independent: counts of cells, a class's patches of a hundred and more together. */
  @Test
  void areasAreTheCells_andAllClassesTile() {
    for (long seed = 0; seed < 12; seed++) {
      Random random = new Random(seed);
      double[] phase = random.doubles(6, 0, 6).toArray();
      double noise = seed % 3 == 0 ? 0.5 : 0;
      ClassGrid grid =
          grid(
              70,
              50,
              (x, y) ->
                  Math.rint(
                      2.5
                          + 1.5 * Math.sin(x / 9 + phase[0] + Math.sin(y / 7 + phase[1]))
                          + Math.sin(y / 8 + phase[2]) * Math.cos(x / 11 + phase[3])
                          + noise * random.nextGaussian()));
      TreeMap<Double, Integer> count = new TreeMap<>();
      for (double v : grid.values()) {
        count.merge(v, 1, Integer::sum);
      }
      ClassBorders borders = new ClassBorders(grid);
      List<Geometry> all = new ArrayList<>();
      for (double v : count.keySet()) {
        List<Polygon> own = borders.polygons(Set.of(v));
        String hint = "seed " + seed + ", class " + v;
        own.forEach(p -> assertTrue(p.isValid(), hint));
        if (count.get(v) > 200) {
          assertEquals(count.get(v), area(own), 0.005 * count.get(v), hint);
        }
        all.addAll(own);
      }
      assertEquals(70 * 50, all.stream().mapToDouble(Geometry::getArea).sum(), 1e-6);
      assertTrue(
          !CoverageValidator.hasInvalidResult(
              CoverageValidator.validate(all.toArray(new Geometry[0]))),
          "seed " + seed + ": overlap or gap");
      // A zone of two classes is exactly the two zones together.
      Set<Double> two = Set.of(count.firstKey(), count.higherKey(count.firstKey()));
      double apart = two.stream().mapToDouble(v -> area(borders.polygons(Set.of(v)))).sum();
      assertEquals(apart, area(borders.polygons(two)), 1e-6);
    }
  }

  @Test
  void straightBorders_stayExactly_andVoidsAreNoClass() {
    ClassGrid grid = grid(20, 10, (x, y) -> x < 5 ? Double.NaN : x < 12 ? 1 : 2);
    ClassBorders borders = new ClassBorders(grid);
    assertEquals(70, area(borders.polygons(Set.of(1.0))), 1e-9);
    assertEquals(80, area(borders.polygons(Set.of(2.0))), 1e-9);
    assertTrue(borders.polygons(Set.of(7.0)).isEmpty());
  }
}
