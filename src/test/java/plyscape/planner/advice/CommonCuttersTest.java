package plyscape.planner.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;

class CommonCuttersTest {

  private static List<Double> lacked(Tool... tools) {
    return CommonCutters.lackedBy(List.of(tools), 5).stream().map(Tool::diameterMm).toList();
  }

  @Test
  void listedDiametersAreNotLacked() {
    assertEquals(List.of(1.0, 2.0, 4.0, 6.0), lacked(tool(3), tool(1.5)));
  }

  /** An eighth and a quarter of an inch stand for 3 and 6 mm. */
  @Test
  void nearlyTheSameIsTheSame() {
    assertEquals(List.of(1.0, 1.5, 2.0, 4.0), lacked(tool(3.175), tool(6.35)));
    assertEquals(List.of(1.0, 1.5, 2.0, 3.0, 4.0, 6.0), lacked(tool(2.5)));
  }

  @Test
  void ballsDoNotCount() {
    assertEquals(List.of(), lacked(Workshop.cutter("ball", Tool.Shape.BALL, 3, 12)));
  }

  /** A larger one as the nearest is run; a smaller one in proportion; flutes reach the bottom. */
  @Test
  void runAsTheNearestListed() {
    List<Tool> lacked = CommonCutters.lackedBy(List.of(tool(3)), 15);
    Tool six = lacked.get(lacked.size() - 1);
    assertEquals("end mill 6", six.name());
    assertEquals(tool(3).cutting(), six.cutting());
    assertEquals(15, six.fluteLengthMm());
    Tool one = lacked.get(0);
    assertEquals(1, one.diameterMm());
    assertEquals(600, one.feedMmPerMin());
    assertEquals(2.0 / 3, one.stepdownMm());
    assertEquals(0.45, one.stepover());
  }

  private static Tool tool(double diameter) {
    return Workshop.endMill(diameter, 12);
  }
}
