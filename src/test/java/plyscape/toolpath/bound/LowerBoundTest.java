package plyscape.toolpath.bound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.task.PocketLevel;

class LowerBoundTest {

  private static final GeometryFactory GEOMETRY = new GeometryFactory();
  private static final Box CARVED = new Box(6, 6, 106, 86);

  private static Tool tool(double diameter, double stepdown) {
    return Workshop.endMill(diameter, 12).with(Workshop.cutting(1800, 500, stepdown, 0.45));
  }

  private static MultiPolygon multi(Geometry g) {
    return GEOMETRY.createMultiPolygon(new Polygon[] {(Polygon) g});
  }

  private static MultiPolygon rectangle(double x, double y, double w, double h) {
    return multi(GEOMETRY.toGeometry(new Envelope(x, x + w, y, y + h)));
  }

  private static PocketLevel level(int ply, double depth, MultiPolygon pocket) {
    return new PocketLevel(ply, depth, pocket, pocket);
  }

  /**
   * Opening of a 40 x 30 rectangle by a disk of radius 3: 1192.2743 mm2 (references.md section 6).
   */
  @Test
  void rectangle_oneCutter_isItsOpeningsAreaOverTheRate() {
    double rate = Math.sqrt(0.45) * 6 * 30;
    for (double shift : new double[] {0, 0.03, 0.1, 0.17}) {
      double s =
          LowerBound.seconds(
              List.of(level(2, 1.5, rectangle(20 + shift, 20 + shift, 40, 30))),
              List.of(tool(6, 2)),
              CARVED,
              0.2);
      assertEquals(1192.2743 / rate, s, 0.004 * s);
    }
  }

  /**
   * The corners (7.7257 mm2, references.md section 6) go to the small cutter less its own (4 - pi)
   * r2 = 0.4829.
   */
  @Test
  void rectangle_twoCutters_cornersCostTheSmallOnesRate() {
    double big = 1192.2743 / (Math.sqrt(0.45) * 6 * 30);
    double small = (7.7257 - 0.4829) / (Math.sqrt(0.45) * 1.5 * 30);
    double s =
        LowerBound.seconds(
            List.of(level(2, 1.5, rectangle(20, 20, 40, 30))),
            List.of(tool(1.5, 2), tool(6, 2)),
            CARVED,
            0.1);
    assertEquals(big + small, s, 0.002 * s);
  }

  /** A disk is its own opening. */
  @Test
  void disk_isAllReached() {
    Geometry disk = GEOMETRY.createPoint(new Coordinate(50.07, 41.3)).buffer(20, 64);
    double s =
        LowerBound.seconds(List.of(level(2, 1.5, multi(disk))), List.of(tool(6, 2)), CARVED, 0.2);
    assertEquals(disk.getArea() / (Math.sqrt(0.45) * 6 * 30), s, 0.004 * s);
  }

  @Test
  void stripNarrowerThanTheCutter_isntCounted() {
    var strip = List.of(level(2, 1.5, rectangle(20, 20, 60, 2.6)));
    assertEquals(0, LowerBound.seconds(strip, List.of(tool(3, 2)), CARVED, 0.2));
    assertTrue(LowerBound.seconds(strip, List.of(tool(1.5, 2)), CARVED, 0.2) > 0);
  }

  /**
   * Slots wider than the cutter by 0.002 to 0.2 mm, along the axes and across, that cross each
   * other and widen: against the opening by offsets of the polygon itself.
   */
  @Test
  void slotsHardlyWiderThanTheCutter_asByOffsetsOfThePolygon() {
    for (double width : new double[] {1.502, 1.55, 1.6, 1.7}) {
      Geometry slots = GEOMETRY.createPoint(new Coordinate(80, 60)).buffer(3, 32);
      double[][] ways = {{20, 15, 90, 15}, {30, 10.03, 30, 80}, {10, 20, 95, 70}, {60, 12, 72, 80}};
      for (double[] way : ways) {
        Coordinate[] ends = {new Coordinate(way[0], way[1]), new Coordinate(way[2], way[3])};
        slots = slots.union(GEOMETRY.createLineString(ends).buffer(width / 2, 32));
      }
      double opened = slots.buffer(-0.75, 64).buffer(0.75, 64).getArea();
      assertTrue(opened > 350, "the slots are reached");
      double s =
          LowerBound.seconds(
              List.of(level(2, 1.5, multi(slots))), List.of(tool(1.5, 2)), CARVED, 0.2);
      assertEquals(opened / (Math.sqrt(0.45) * 1.5 * 30), s, 0.005 * s, "width " + width);
    }
  }

  /**
   * The border is wall: a pocket over the whole carved area loses its four corners, and no more.
   */
  @Test
  void wholeCarvedArea_losesTheCornersOnly() {
    double s =
        LowerBound.seconds(
            List.of(level(2, 1.5, rectangle(6, 6, 100, 80))), List.of(tool(6, 2)), CARVED, 0.2);
    assertEquals((8000 - (4 - Math.PI) * 9) / (Math.sqrt(0.45) * 6 * 30), s, 0.001 * s);
  }

  @Test
  void levelsAtDepthZeroAndEmptyOnes_costNothing() {
    var levels =
        List.of(
            level(1, 0, rectangle(6, 6, 100, 80)),
            level(2, 1.5, rectangle(20, 20, 40, 30)),
            level(3, 2.5, GEOMETRY.createMultiPolygon()));
    double one = LowerBound.seconds(levels.subList(1, 2), List.of(tool(6, 2)), CARVED, 0.2);
    assertEquals(one, LowerBound.seconds(levels, List.of(tool(6, 2)), CARVED, 0.2));
  }

  /**
   * Six sheets of 0.5 are six halves of one stepdown of 3.0, though the sum of 0.1s isn't exact.
   */
  @Test
  void depthOfWholeSteps_beginsNoFurtherStep() {
    assertEquals(3, ChainCost.steps(0.1 + 0.2, 0.1));
    assertEquals(1, ChainCost.steps(0.9, 0.9));
    assertEquals(2, ChainCost.steps(0.9001, 0.9));
    assertEquals(7, ChainCost.steps(2.1, 0.3));
  }

  /**
   * Against all chains written out: every subset of the levels above as stops, every cutter on
   * every link.
   */
  @Test
  void leastCost_equalsBruteForceOverAllChains() {
    for (int seed = 0; seed < 400; seed++) {
      var random = new Random(seed);
      int n = 1 + random.nextInt(5);
      double[] depths = new double[n];
      double depth = 0;
      for (int i = 0; i < n; i++) {
        depth += 0.3 + random.nextInt(8) * 0.1;
        depths[i] = depth;
      }
      List<Tool> tools = new ArrayList<>();
      int[] deepest = new int[1 + random.nextInt(3)];
      for (int t = 0; t < deepest.length; t++) {
        deepest[t] = random.nextInt(n + 1) - 1;
        double diameter = 1 + random.nextInt(6);
        tools.add(
            Workshop.cutter("t" + t, Tool.Shape.FLAT, diameter, 1 + random.nextInt(5))
                .with(
                    Workshop.cutting(
                        600 + random.nextInt(3) * 600,
                        500,
                        0.3 + random.nextInt(20) * 0.1,
                        0.2 + random.nextInt(7) * 0.1)));
      }
      double expected = bruteForce(depths, n - 1, tools, deepest);
      double found = new ChainCost(depths, tools).least(n - 1, deepest);
      assertEquals(
          expected, found, Double.isInfinite(expected) ? 0 : 1e-12 * expected, "seed " + seed);
    }
  }

  private static double bruteForce(double[] depths, int target, List<Tool> tools, int[] deepest) {
    double best = Double.POSITIVE_INFINITY;
    for (int stops = 0; stops < 1 << target; stops++) {
      double total = 0;
      double from = 0;
      for (int level = 0; level <= target; level++) {
        if (level < target && (stops >> level & 1) == 0) {
          continue;
        }
        double link = Double.POSITIVE_INFINITY;
        for (int t = 0; t < tools.size(); t++) {
          Tool tool = tools.get(t);
          if (deepest[t] >= level && tool.fluteLengthMm() >= depths[level] - 1e-9) {
            // In thousandths, so that this way of rounding up shares nothing with the code under
            // test.
            long step = Math.round(tool.stepdownMm() * 1000);
            long count = (Math.round((depths[level] - from) * 1000) + step - 1) / step;
            link =
                Math.min(
                    link,
                    count
                        / (Math.sqrt(tool.stepover())
                            * tool.diameterMm()
                            * (tool.feedMmPerMin() / 60)));
          }
        }
        total += link;
        from = depths[level];
      }
      best = Math.min(best, total);
    }
    return best;
  }
}
