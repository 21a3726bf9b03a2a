package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/**
 * The usual worked grids for slopes after Horn, recomputed with full precision; see the check
 * values of the project.
 */
class HillshadeTest {

  @Test
  void workedGrid_lightFromTheNorthWest() {
    // 2450 2461 2483 / 2452 2461 2483 / 2447 2455 2477, cells of 5
    assertEquals(
        154.0287, Hillshade.light(2450, 2461, 2483, 2452, 2483, 2447, 2455, 2477, 5), 5e-5);
  }

  @Test
  void levelGround() {
    assertEquals(180.3122, Hillshade.light(7, 7, 7, 7, 7, 7, 7, 7, 1), 5e-5);
  }

  @Test
  void slopeTurnedAway_isDark() {
    assertEquals(0, Hillshade.light(9, 6, 3, 6, 0, 3, 0, -3, 1), 0);
  }
}
