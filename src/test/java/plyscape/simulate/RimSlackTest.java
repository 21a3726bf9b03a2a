package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

/** How far a level floor of a cutter's width lies off a face, by the face's own formula. */
class RimSlackTest {

  private static final double RADIUS_MM = 2;

  private static RimSlack slack(DoubleBinaryOperator height, double... columns) {
    List<double[]> readings = new ArrayList<>();
    for (double x : columns) {
      for (double y : new double[] {0, 40}) {
        readings.add(new double[] {x, y, height.applyAsDouble(x, y)});
      }
    }
    return new RimSlack(new BentPanel(ProbedTop.of(readings), List.of(), null), RADIUS_MM);
  }

  @Test
  void evenSlopes_whateverTheirDirection() {
    for (int degrees = 0; degrees < 180; degrees += 5) {
      double alongX = 0.05 * Math.cos(Math.toRadians(degrees));
      double alongY = 0.05 * Math.sin(Math.toRadians(degrees));
      RimSlack slack = slack((x, y) -> alongX * x + alongY * y, 0, 40);
      assertEquals(0.1, slack.atMm(20, 20, 0.1), 0.0006, degrees + " degrees");
    }
  }

  @Test
  void valleyWithinTheRadius_countsToItsBottom() {
    RimSlack slack = slack((x, y) -> 0.05 * Math.abs(x - 21), 0, 21, 40);
    // To the bottom 0.05, to the left 0.1.
    assertEquals(0.1, slack.atMm(20, 20, 1), 1e-9);
    RimSlack bottom = slack((x, y) -> x < 20 ? 0 : 0.05 * Math.min(x - 20, 22 - x), 0, 20, 21, 22);
    assertEquals(0.05, bottom.atMm(20, 20, 1), 1e-9);
  }

  @Test
  void slightOffsets_areExplainedByEightWays() {
    RimSlack slack = slack((x, y) -> 0.05 * x, 0, 40);
    assertEquals(slack.atMm(20, 20), slack.atMm(20, 20, 0.09));
  }
}
