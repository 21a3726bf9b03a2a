package plyscape.toolpath.order;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.PathTrial;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;

class GapCostTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Tool TOOL = Workshop.END_MILL_3;

  /** A field of 60 x 40 mm with a wall in its middle, from the south up to 30. */
  private static DistanceField field() {
    Geometry all = FACTORY.toGeometry(new Envelope(0, 60, 0, 40));
    Geometry wall = FACTORY.toGeometry(new Envelope(29, 31, 0, 30));
    return new DistanceField(
        new PocketEdges(RandomPockets.multi(all.difference(wall))),
        Lattice.over(new Box(0, 0, 60, 40), 1.5));
  }

  private static final TravelCost COST =
      new GapCost(new int[] {0, 0, 1}, List.of(field(), field()), TOOL, PathTrial.MACHINE);

  @Test
  void wayBesideOrThroughAWall_staysDownOrLifts() {
    // 8 mm at 30 mm/s on open ground, once with a wall in between, once to another step.
    assertEquals(8 / 30.0, COST.of(0, 10, 10, 1, 18, 10), 1e-9);
    double lifted = COST.of(0, 26, 10, 1, 34, 10);
    assertTrue(lifted > 8 / 30.0, "over the wall " + lifted);
    assertEquals(lifted, COST.of(0, 10, 10, 2, 18, 10), 1e-9);
    assertEquals(lifted, COST.of(-1, 10, 10, 1, 18, 10), 1e-9);
  }

  @Test
  void least_isNeverMoreAndTheSameOnOpenGround() {
    Random random = new Random(11);
    int same = 0;
    for (int trial = 0; trial < 5000; trial++) {
      double ax = 2 + 56 * random.nextDouble();
      double ay = 2 + 36 * random.nextDouble();
      double bx = Math.max(2, Math.min(58, ax + 30 * (random.nextDouble() - 0.5)));
      double by = Math.max(2, Math.min(38, ay + 30 * (random.nextDouble() - 0.5)));
      int from = random.nextInt(4) - 1;
      int to = random.nextInt(3);
      double exact = COST.of(from, ax, ay, to, bx, by);
      double least = COST.least(from, ax, ay, to, bx, by);
      assertTrue(least <= exact + 1e-12, "trial " + trial + ": " + least + " over " + exact);
      same += least >= exact - 1e-12 ? 1 : 0;
    }
    assertTrue(same > 3000 && same < 5000, "the same in " + same);
  }

  @Test
  void wayThatGrazesAWall_costsTheSameThereAndBack() {
    Random random = new Random(5);
    int lifted = 0;
    for (int trial = 0; trial < 20000; trial++) {
      // Over the wall's end at 30 the cutter's centre needs 1.5 mm: some ways pass, some don't.
      double ax = 24 + 4 * random.nextDouble();
      double ay = 30.5 + 1.5 * random.nextDouble();
      double bx = 32 + 4 * random.nextDouble();
      double by = 30.5 + 1.5 * random.nextDouble();
      double there = COST.of(0, ax, ay, 1, bx, by);
      assertEquals(there, COST.of(1, bx, by, 0, ax, ay), 1e-12, "trial " + trial);
      lifted += there > Math.hypot(bx - ax, by - ay) / 30 + 1e-9 ? 1 : 0;
    }
    assertTrue(lifted > 2000 && lifted < 18000, "lifted in " + lifted);
  }
}
