package plyscape.toolpath.depth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Costs are areas in nodes, a node counted once a cut; a factor of 1e-6 a plane breaks ties. */
class RestTallyTest {

  private static final double[] DEPTHS = {1, 2, 3};
  private static final double STEPDOWN = 2;
  private static final double TIES = 1e-4;

  /** So many nodes on which wood stands at a depth, with a level to reach. */
  private static RestTally tally(float standing, int level, int count) {
    RestTally tally = new RestTally();
    add(tally, standing, level, count);
    return tally;
  }

  private static void add(RestTally tally, float standing, int level, int count) {
    for (int i = 0; i < count; i++) {
      tally.add(standing, level);
    }
  }

  private static double cost(RestTally tally, Double... planes) {
    return tally.cost(List.of(planes), DEPTHS, STEPDOWN);
  }

  @Test
  void nothingCounted_isFree() {
    RestTally tally = new RestTally();
    assertEquals(0, cost(tally, 1.5));
    tally.add(0, 0);
    assertTrue(cost(tally, 1.5) > 0);
  }

  @Test
  void withinOneStep_isOneCut_whateverThePlanes() {
    RestTally tally = tally(0, 1, 10);
    assertEquals(10, cost(tally), TIES);
    assertEquals(10, cost(tally, 1.0), TIES);
  }

  @Test
  void deeperThanAStep_withoutAPlane_cant() {
    assertEquals(Double.POSITIVE_INFINITY, cost(tally(0, 2, 10)));
  }

  @Test
  void deeperThanAStep_onePlaneBetween_isTwoCuts() {
    RestTally tally = tally(0, 2, 10);
    assertEquals(20, cost(tally, 1.0), TIES);
    assertEquals(20, cost(tally, 2.0), TIES);
  }

  @Test
  void planeTooDeepForAStep_orTooHighForTheRest_cant() {
    RestTally tally = tally(0, 2, 10);
    assertEquals(Double.POSITIVE_INFINITY, cost(tally, 2.5));
    assertEquals(Double.POSITIVE_INFINITY, cost(tally, 0.5));
  }

  @Test
  void planeThatIsCutAlready_doesntCount() {
    RestTally tally = tally(1, 2, 10);
    assertEquals(10, cost(tally, 1.0), TIES);
  }

  @Test
  void placesOfSeveralKinds_addUp() {
    RestTally tally = tally(0, 2, 10);
    add(tally, 1, 2, 5);
    add(tally, 0, 0, 3);
    add(tally, 0, 2, 1);
    assertEquals(2 * 11 + 5 + 3, cost(tally, 1.5), TIES);
  }

  @Test
  void equalCosts_fewerPlanesWin() {
    RestTally tally = tally(0, 1, 10);
    assertTrue(cost(tally) < cost(tally, 1.0));
  }
}
