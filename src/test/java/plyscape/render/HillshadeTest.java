package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/**
 * The usual worked grids for slopes after Horn, recomputed with full precision; see the check
 * values of the project.
 */
class HillshadeTest {

  /** Light at the middle of a grid, rows from the north. */
  private static double light(double[][] z, double w) {
    return Hillshade.light(
        Hillshade.edge(z[0][2], z[1][2], z[2][2]),
        Hillshade.edge(z[0][0], z[1][0], z[2][0]),
        Hillshade.edge(z[2][0], z[2][1], z[2][2]),
        Hillshade.edge(z[0][0], z[0][1], z[0][2]),
        w);
  }

  @Test
  void workedGrid_lightFromTheNorthWest() {
    double[][] grid = {{2450, 2461, 2483}, {2452, 2461, 2483}, {2447, 2455, 2477}};
    assertEquals(154.0287, light(grid, 5), 5e-5);
  }

  @Test
  void levelGround() {
    assertEquals(180.3122, light(new double[][] {{7, 7, 7}, {7, 7, 7}, {7, 7, 7}}, 1), 5e-5);
  }

  @Test
  void slopeTurnedAway_isDark() {
    assertEquals(0, light(new double[][] {{9, 6, 3}, {6, 3, 0}, {3, 0, -3}}, 1), 0);
  }
}
