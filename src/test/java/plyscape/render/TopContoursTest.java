package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.bend.TopMap;
import plyscape.bend.TopReading;
import plyscape.job.Job;

class TopContoursTest {

  /** On a plane contours are straight, at their heights, and right across the panel. */
  @Test
  void plane_linesLieAtTheirHeights() {
    TopMap map =
        TopMap.of(
            "t",
            List.of(
                new TopReading(0, 0, 0, 1),
                new TopReading(100, 0, 0.4, 2),
                new TopReading(0, 80, 0, 3),
                new TopReading(100, 80, 0.4, 4)),
            0);
    TopContours contours = TopContours.of(map, new Job.PanelSpec(100, 80, 5));
    assertEquals(0.05, contours.stepMm(), 1e-12);
    double length = 0;
    for (TopContours.Line line : contours.lines()) {
      assertEquals(line.heightMm(), 0.004 * line.x0(), 1e-9);
      assertEquals(line.heightMm(), 0.004 * line.x1(), 1e-9);
      length += Math.abs(line.y1() - line.y0());
    }
    // 0.05 to 0.35 inside, and one or both at the edges.
    double lines = length / 80;
    assertEquals(Math.rint(lines), lines, 1e-6);
    assertTrue(lines > 6.5 && lines < 9.5, "lines " + lines);
  }
}
