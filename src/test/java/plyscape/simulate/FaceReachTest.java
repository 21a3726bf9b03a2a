package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.simulate.stroke.ToolForm;

/** How deep a ball is said to reach, against the same worked out densely across a long face. */
class FaceReachTest {

  private static final Box PANEL = new Box(0, 0, 30, 20);
  private static final double RADIUS = 2.77;
  private static final double CELL = 0.1;

  /** A trench from X 14 to 17, down from 1 mm by 1.6 mm within 1 mm on both sides. */
  private static double wanted(double x) {
    return 1 + 1.6 * Math.max(0, Math.min(1, Math.min(x - 14, 17 - x)));
  }

  private static double height(double off) {
    return RADIUS - Math.sqrt(RADIUS * RADIUS - off * off);
  }

  private static double tip(double axis) {
    double best = Double.POSITIVE_INFINITY;
    for (double off = -RADIUS; off <= RADIUS; off += 0.005) {
      best = Math.min(best, wanted(axis + off) + height(off));
    }
    return best;
  }

  private static double reach(double x) {
    double best = 0;
    for (double off = -RADIUS; off <= RADIUS; off += 0.005) {
      best = Math.max(best, tip(x + off) - height(off));
    }
    return best;
  }

  private static Target target() {
    CellFrame frame = new CellFrame(-0.5, -0.5, 1, 1, 31, 21);
    double[] z = new double[frame.size()];
    for (int i = 0; i < z.length; i++) {
      z[i] = -wanted(frame.centreX(i % frame.columns()));
    }
    return new Target(
        2,
        2.6,
        new double[][] {TargetsTest.square(5, 5, 25, 15)},
        new SculptedDepth(new Grid(frame, z), -1, -2.6, 1, 2.6, 0.02));
  }

  /**
   * The trench's edges lie halfway between two cells' centres, 0.04 mm higher than they tell: the
   * ball that lies on both doesn't reach as deep as it would over the centres alone.
   */
  @Test
  void trenchWithEdgesBetweenCells_isNoDeeperInReachThanItIs() {
    CellFrame frame = HeightField.uncut(PANEL, CELL).frame();
    float[] depth = new float[frame.size()];
    for (int i = 0; i < depth.length; i++) {
      depth[i] = (float) wanted(frame.centreX(i % frame.columns()));
    }
    List<Target> targets = List.of(target());
    FaceSurface surface = new FaceSurface(frame, depth, new short[depth.length], targets);
    Tool ball = Workshop.cutter("ball", Tool.Shape.BALL, 2 * RADIUS, 12);
    FaceWalls walls = new FaceWalls(PANEL, targets, null);
    FaceReach reach = new FaceReach(surface, walls, ToolForm.of(ball), false, 12);
    for (int column = 141; column < 169; column++) {
      double truly = reach(frame.centreX(column));
      assertTrue(!reach.reaches(column, 100, truly + 0.006), "too deep at column " + column);
      assertTrue(reach.reaches(column, 100, truly - 0.05), "not deep enough at " + column);
    }
  }
}
