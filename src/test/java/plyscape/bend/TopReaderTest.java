package plyscape.bend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;

class TopReaderTest {

  private static final String GOOD = "x,y,z\n10,10,0\n230,10,0.2\n10,180,-0.1\n230,180,0.3\n";

  private final Warnings warnings = new Warnings();

  @Test
  void otherColumnsArePassedOver_andRowsWithoutHeightCounted() {
    List<TopReading> readings =
        TopReader.parse(
            "top.csv",
            "# probed\nplace,X,Y,Z,note\n1,10,20,0.5,a\n2,30,40,,b\n3,1,2,-.25,\n",
            warnings);
    assertEquals(List.of(new TopReading(10, 20, 0.5, 3), new TopReading(1, 2, -0.25, 5)), readings);
    assertEquals("top-empty", warnings.list().get(0).code());
    assertTrue(warnings.list().get(0).message().startsWith("1 of 3 rows"));
  }

  @Test
  void badText_namesTheLine() {
    assertFault("", "no rows");
    assertFault("x,y,z\n", "no row with a height");
    assertFault("x,y,z\n1,2,\n", "fill in the column z");
    assertFault("x,y\n1,2\n", "no column \"z\" among x, y");
    assertFault("x;y;z\n1;2;3\n", "part columns by commas");
    assertFault("x,y,z\n1,2,0,3\n", "top.csv:2:1: 4 cells");
    assertFault("x,y,z\n1,2,3\n1,a,3\n", "top.csv:3:1: y \"a\"");
    assertFault("x,y,z\n1,2,nan\n", "z \"nan\"");
  }

  @Test
  void readingsOfOnePlace_areAveraged_orNamed() {
    List<TopReading> places = check(GOOD + "10.005,10,0.08\n");
    assertEquals(4, places.size());
    assertEquals(0.04, places.get(0).z(), 1e-12);
    assertCheck(
        GOOD + "10.005,10,0.12\n",
        "top.csv:6:1: 0.12 mm at (10.005, 10), but 0 mm there in line 2");
  }

  @Test
  void wrongUnitsAndPlaces() {
    assertCheck("x,y,z\n0.4,0.4,0\n9,0.4,0\n0.4,7,0\n", "are they in inches?");
    assertCheck("x,y,z\n0.01,0.01,0\n0.23,0.01,0\n0.01,0.18,0\n", "are they in metres?");
    assertCheck(
        "x,y,z\n10,10,0\n10,400,0\n180,10,0\n", "(10, 400) outside the panel of 240 x 190 mm");
    String swapped = "x,y,z\n10,10,0\n10,285,0\n180,10,0\n";
    String message =
        assertThrows(
                InputFault.class,
                () -> TopCheck.check("top.csv", parse(swapped), new Box(0, 0, 300, 190), 0, false))
            .getMessage();
    assertTrue(message.contains("are x and y swapped?"), message);
  }

  @Test
  void tooFewOrInLine_orTooMuchBent() {
    assertCheck("x,y,z\n10,10,0\n200,180,0\n", "2 places");
    assertCheck("x,y,z\n10,10,0\n110,100,0.1\n210,190,0\n", "3 places, all in a line");
    String bent = "x,y,z\n10,10,0\n200,10,3.2\n10,180,0\n";
    assertCheck(bent, "heights from 0 mm (line 2) to 3.2 mm (line 3)");
    assertEquals(
        3, TopCheck.check("top.csv", parse(bent), new Box(0, 0, 240, 190), 0, true).size());
    assertCheck("x,y,z\n10,10,-43\n200,10,-42.5\n10,180,-43\n", "machine.zero_z");
  }

  private static List<TopReading> check(String text) {
    return TopCheck.check("top.csv", parse(text), new Box(0, 0, 240, 190), 0, false);
  }

  private static List<TopReading> parse(String text) {
    return TopReader.parse("top.csv", text, new Warnings());
  }

  private static void assertCheck(String text, String part) {
    String message = assertThrows(InputFault.class, () -> check(text)).getMessage();
    assertTrue(message.contains(part), message);
  }

  private static void assertFault(String text, String part) {
    String message = assertThrows(InputFault.class, () -> parse(text)).getMessage();
    assertTrue(message.contains(part), message);
  }
}
