package plyscape.shop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.gcode.ProgramFrame;
import plyscape.grid.Box;
import plyscape.layup.PanelPoint;

class ProbeTest {

  private static final ProgramFrame CORNER = new ProgramFrame(0, 0, 0);

  @Test
  void places_goBackAndForth_andHoldTheCorners() {
    ProbePlaces p = ProbePlaces.over(new Box(6, 10, 206, 110), 3, 2);
    assertEquals(
        List.of(
            new PanelPoint(6, 10),
            new PanelPoint(106, 10),
            new PanelPoint(206, 10),
            new PanelPoint(206, 110),
            new PanelPoint(106, 110),
            new PanelPoint(6, 110)),
        p.places());
    assertTrue(ProbeFiles.top(p).contains("\nplace,x,y,z\n1,6,10,\n2,106,10,\n"));
  }

  /**
   * Straight probe: RS274/NGC 3.5.9 (references-2.md, section 11): the point is 0.254 mm or more
   * away, and probing is modal, so that each motion after it is said anew.
   */
  @Test
  void program_touchesFastThenSlow_fromFarEnough() {
    String text = ProbeProgram.text("Job", CORNER, 4, List.of(new PanelPoint(10, 20)));
    assertTrue(
        text.endsWith(
            "G17 G21 G90 G94 G54\nM5\nG0 Z5\n(place 1)\nG0 X10 Y20\nG38.2 Z-4 F150\nG0 Z4\n"
                + "G38.2 Z-4 F30\nM0\nG0 Z5\nM30\n"),
        text);
    assertTrue(text.contains("(needs a wired touch probe"));
    String bottom =
        ProbeProgram.text("Job", new ProgramFrame(240, 0, 8.4), 4, List.of(new PanelPoint(10, 20)));
    assertTrue(bottom.contains("G0 X-230 Y20\nG38.2 Z4.4 F150\nG0 Z12.4\n"), bottom);
    text.lines().forEach(line -> assertTrue(line.length() < 80 && !line.contains("M3 "), line));
  }

  @Test
  void log_anyTextWithThreeNumbersInALine() {
    ProbeLog log =
        ProbeLog.of(
            String.join(
                "\n",
                "probing started 2024-05-01",
                "[PRB:10.000,20.000,-0.123:1]",
                "ok",
                "X: 30 Y: 20.5 Z: 0.25",
                "Z0.26 X30 Y20.5 (again, slowly)",
                "50 20 .31",
                "1 2 3 4",
                "G38.2 Z-4 F30",
                ""),
            new ProgramFrame(100, 0, 0));
    assertEquals(List.of(2, 4, 5, 6), log.taken());
    assertEquals(List.of(1, 3, 7, 8), log.passed());
    assertEquals(3, log.points().size());
    assertArrayEquals(new double[] {130, 20.5, 0.26}, log.points().get(1), 1e-12);
    assertTrue(log.csv().startsWith("x,y,z\n110,20,-0.123\n130,20.5,0.26\n"), log.csv());
  }

  @Test
  void edgePlaces_lieOnAllFourEdges_inOrderRound() {
    List<PanelPoint> places = ProbeFiles.edgePlaces(200, 100);
    assertEquals(12, places.size());
    assertEquals(new PanelPoint(10, 0), places.get(0));
    assertEquals(new PanelPoint(200, 5), places.get(3));
    assertEquals(0, places.get(11).xMm());
    assertEquals(5, places.get(11).yMm(), 1e-9);
  }
}
