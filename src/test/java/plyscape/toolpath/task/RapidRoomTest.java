package plyscape.toolpath.task;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import plyscape.machine.Machine;

/** How near rapids come to floors, by hand. */
class RapidRoomTest {

  @Test
  void withTheUsualErrorOfZ_itIsATenth() {
    assertEquals(0.03, Machine.USUAL.zErrorMm());
    assertEquals(new RapidRoom(1.0, 0.1, 0), RapidRoom.of(Machine.USUAL));
  }

  @Test
  void onASlopeOfThreeInAHundred_aCutterOfSixNeedsTwiceItsRim() {
    double rim = 3 * 0.03;
    assertEquals(0.1 + 0.18, RapidRoom.of(Machine.USUAL).onSlopes(rim).floorMm(), 1e-12);
    assertEquals(1.0, RapidRoom.of(Machine.USUAL).onSlopes(rim).faceMm());
    assertEquals(0.18, RapidRoom.of(Machine.USUAL).onSlopes(rim).straightMm(), 1e-12);
  }

  @Test
  void overAFaceThereIsNeverLessRoomThanOverAFloor() {
    RapidRoom steep = RapidRoom.of(Machine.USUAL).onSlopes(1);
    assertEquals(2.1, steep.floorMm(), 1e-12);
    assertEquals(steep.floorMm(), steep.faceMm());
    assertThrows(IllegalArgumentException.class, () -> new RapidRoom(0.1, 0.2, 0));
  }
}
