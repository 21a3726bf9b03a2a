package plyscape.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plyscape.fault.InputFault;
import plyscape.layup.GlueLine;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.layup.calibration.Reading;

class ReadingsFileTest {

  private static final Layup LAYUP =
      new Layup(
          "layup.yaml",
          "",
          List.of(
              new Ply(1, "meadow", 0, 0.9, 0.04, 0, ""),
              new Ply(2, "deep, blue", 0, 0.9, 0.04, 0, ""),
              new Ply(3, "oak", 0, 0.9, 0.04, 0, "")),
          new GlueLine(0.04, 0.01),
          Measured.NOTHING,
          0);

  private static List<Reading> parse(String text) {
    return ReadingsFile.parse("readings.csv", text, LAYUP);
  }

  @Test
  void depths_byNumberAndName_edgesAndTolerances() {
    List<Reading> r =
        parse(
            "\ufeffply, edge, depth, tolerance\r\n"
                + "# a note\r\n"
                + "1,,0.91,\r\n"
                + "\"deep, blue\",top,0.95,0.03\r\n");
    assertEquals(
        List.of(
            new Reading(3, 1, false, 0.91, 0, null, false),
            new Reading(4, 2, true, 0.95, 0.03, null, false)),
        r);
  }

  @Test
  void fromTo_takesTheGlueLineOff_andKnowsItsOwnWidth() {
    Reading r = parse("ply,from,to\nmeadow,0.84,1.02\noak,,\n").get(0);
    assertEquals((0.84 + 0.98) / 2, r.depthMm(), 1e-12);
    assertEquals(Math.sqrt(3) * 0.07, r.toleranceMm(), 1e-12);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          'ply,depth\n1,0.9\n2,x'|row 3|'x'
          'ply,depth\n1,0.9\n\n2,-1'|row 4|-1
          'ply,depth\n1,1e3'|row 2|1e3
          'ply,depth\nmeadw,0.9'|row 2|did you mean
          'ply,depth\n1,0.9,3'|row 2|3 cells
          'ply;depth\n1;0,9'|row 1|semicolons
          'ply,depth\n1,NaN'|row 2|NaN
          'ply,depht\n1,0.9'|row 1|did you mean
          'ply\n1'|row 1|wanted ply,depth
          'ply,depth\n"1,0.9'|row 2|quote
          'ply,edge,depth\n1,top,0.2'|row 2|top face
          'ply,edge,depth\n1,left,0.2'|row 2|top or bottom
          'ply,from,to\n1,0.9,0.9'|row 2|deeper
          'ply,from,to\n1,0.9,'|row 2|to
          'ply,from,to\n3,2.9,3'|row 2|last ply
          'ply,depth\n1,'|''|no row with a reading
          ''|''|no rows
          """)
  void badRows_faultNamesTheRow(String text, String row, String says) {
    InputFault fault = assertThrows(InputFault.class, () -> parse(text.replace("\\n", "\n")));
    assertTrue(fault.getMessage().contains(row), fault.getMessage());
    assertTrue(fault.getMessage().contains(says), fault.getMessage());
  }

  @Test
  void padNumbers_areTakenAsSuch() {
    String pads = "# pads: 0.15 0.3 0.45 0.6 0.75 0.9 1.05 1.2 1.35 1.5 1.65 1.8 1.95\n";
    Reading byPad = parse(pads + "ply,pad\nmeadow,5\n").get(0);
    assertEquals((0.75 + 0.9 - 0.04) / 2, byPad.depthMm(), 1e-12);
    // Bottom of ply 2 lies near 1.84: 12 and 13 can't be depths there.
    Reading whole = parse(pads + "ply,from,to\n2,12,13\n").get(0);
    assertEquals((1.8 + 1.95 - 0.04) / 2, whole.depthMm(), 1e-12);
    assertEquals((1 + 2 - 0.04) / 2, parse(pads + "ply,from,to\n1,1,2\n").get(0).depthMm(), 1e-12);
    String fault =
        assertThrows(InputFault.class, () -> parse("ply,from,to\n2,12,13\n")).getMessage();
    assertTrue(fault.contains("panel of 2.78 mm") && fault.contains("number of a pad"), fault);
    fault = assertThrows(InputFault.class, () -> parse(pads + "ply,pad\n1,13\n")).getMessage();
    assertTrue(fault.contains("0 to 12"), fault);
    assertThrows(InputFault.class, () -> parse("ply,pad\n1,2\n"));
    // Plies of about 0.9 mm: their numbers are nearly their depths.
    fault = assertThrows(InputFault.class, () -> parse("ply,depth\n1,1\n2,2\n")).getMessage();
    assertTrue(fault.contains("numbers of their plies"), fault);
    assertEquals(1, parse("ply,depth\n1,1\n").size());
  }

  @Test
  void placesOffThePanel_areNamed() {
    List<Reading> readings = parse("ply,depth,x,y\n1,0.9,10,230\n2,1.84,900,120\n");
    ReadingsFile.requireOn("r.csv", readings, 1000, 240);
    String fault =
        assertThrows(InputFault.class, () -> ReadingsFile.requireOn("r.csv", readings, 240, 240))
            .getMessage();
    assertTrue(fault.contains("row 3: read at (900, 120)"), fault);
  }

  @Test
  void places_areColumnsXAndY() {
    Reading r = parse("ply,depth,x,y\n1,0.9,20,-5.5\n").get(0);
    assertEquals(new PanelPoint(20, -5.5), r.at());
    assertThrows(InputFault.class, () -> parse("ply,depth,x\n1,0.9,20\n"));
    assertThrows(InputFault.class, () -> parse("ply,depth,x,y\n1,0.9,20,\n"));
  }
}
