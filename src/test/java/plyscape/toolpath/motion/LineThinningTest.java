package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;

/** Places that one line may stand for. */
class LineThinningTest {

  private static final double STEPDOWN_MM = 0.47;

  private static final Tool TOOL =
      Workshop.cutter("end mill", Tool.Shape.FLAT, 0.94, 12)
          .with(Workshop.cutting(700, 200, STEPDOWN_MM, 0.5));

  @Test
  void straightWay_isOneLine() {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= 20; i++) {
      points.add(new double[] {i, 2 * i, 1, 0.5});
    }
    List<double[]> ends = LineThinning.ends(points, TOOL);
    assertEquals(1, ends.size());
    assertEquals(40, ends.get(0)[1]);
    assertEquals(350, ends.get(0)[3]);
  }

  @Test
  void bend_endsALine() {
    List<double[]> ends =
        LineThinning.ends(
            List.of(
                new double[] {0, 0, 1, 1}, new double[] {1, 0, 1, 1}, new double[] {1, 1, 1, 1}),
            TOOL);
    assertEquals(2, ends.size());
  }

  /** What is left of a street's end is hardly wider than the cutter: to and fro on the spot. */
  @Test
  void stepsDownOnTheSpot_staySteps() {
    List<double[]> points = new ArrayList<>();
    points.add(new double[] {16.346, 47.807, 2.25, 1});
    for (int time = 1; time <= 6; time++) {
      double depth = 2.25 + 0.45 * time;
      double shift = time % 2 == 0 ? 0 : 5e-4;
      points.add(new double[] {16.346 + 5e-4 - shift, 47.807, depth, 1});
      points.add(new double[] {16.346 + shift, 47.807, depth, 1});
    }
    double depth = 2.25;
    for (double[] end : LineThinning.ends(points, TOOL)) {
      assertTrue(end[2] - depth <= STEPDOWN_MM + 1e-9, "from " + depth + " to " + end[2]);
      depth = end[2];
    }
    assertEquals(4.95, depth, 1e-9);
  }
}
