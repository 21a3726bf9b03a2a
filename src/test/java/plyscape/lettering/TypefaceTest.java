package plyscape.lettering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.fault.InputFault;
import plyscape.grid.Box;

class TypefaceTest {

  private static final Typeface STROKES = new StrokeTypeface(1.5);

  @TempDir Path folder;

  private TrueTypeface made() throws IOException {
    Path file = folder.resolve("made.ttf");
    Files.write(file, MadeFont.bytes());
    return TrueTypeface.of(file);
  }

  private static boolean covers(Geometry area, double x, double y) {
    return area.covers(new GeometryFactory().createPoint(new Coordinate(x, y)));
  }

  @Test
  void strokes_areAsHighAsAskedWithTheirWidth() {
    Envelope box = STROKES.line("HE", 10).getEnvelopeInternal();
    assertEquals(0, box.getMinY(), 1e-9);
    assertEquals(10, box.getMaxY(), 1e-9);
    // Closed form: a straight stroke with round ends.
    double area = STROKES.line("I", 10).getArea();
    assertEquals(8.5 * 1.5 + Math.PI * 0.75 * 0.75, area, 0.01);
  }

  /** The R's bowl is up, its stem to the left; the 7's bar is up, its foot to the left. */
  @Test
  void strokes_readFromLeftToRight() {
    Geometry r = STROKES.line("R", 14);
    double unit = 12.5 / 6;
    assertTrue(covers(r, 0.75, 7) && covers(r, 0.75 + 4 * unit, 0.75 + 4.5 * unit));
    assertFalse(covers(r, 0.75 + 4 * unit, 0.75 + 2 * unit), "a mirrored or turned R");
    Geometry seven = STROKES.line("7", 14);
    assertTrue(covers(seven, 2, 13.25) && covers(seven, 0.75 + unit, 1));
    assertFalse(covers(seven, 0.75 + 2.8 * unit, 1));
  }

  /** Closed forms: the made letters' areas, at a scale of 7 mm for 700 units. */
  @Test
  void trueType_fillsWhatOutlinesWindAround() throws IOException {
    TrueTypeface font = made();
    assertEquals((2 * 100 * 700 + 300 * 100) * 1e-4, font.line("H", 7).getArea(), 0.01);
    assertEquals((600 * 700 - 400 * 500) * 1e-4, font.line("O", 7).getArea(), 0.01);
    assertEquals(
        (300 * 400 + 300 * 400 - 200 * 100) * 1e-4, font.line("8", 7).getArea(), 0.01, "overlap");
    Geometry corner = font.line("L", 7);
    assertTrue(covers(corner, 0.5, 6.5) && covers(corner, 3.5, 0.5));
    assertFalse(covers(corner, 3.5, 6.5) || covers(corner, 3.5, -0.5));
    assertEquals("xy", font.lacking("H x y"));
  }

  @Test
  void trueType_ofAnotherFile_isABadInput() throws IOException {
    Path file = folder.resolve("note.ttf");
    Files.writeString(file, "not a font");
    InputFault fault = assertThrows(InputFault.class, () -> TrueTypeface.of(file));
    assertTrue(fault.getMessage().contains("note.ttf"), fault.getMessage());
  }

  @Test
  void placing_turnsAndAligns() {
    Geometry line = new GeometryFactory().toGeometry(new Envelope(0, 10, 0, 2));
    assertEquals(
        new Envelope(10, 20, 5, 7),
        new Placing(20, 5, Align.RIGHT, 0).of(line).getEnvelopeInternal());
    Envelope up = new Placing(20, 5, Align.CENTRE, 90).of(line).getEnvelopeInternal();
    assertEquals(18, up.getMinX(), 1e-9);
    assertEquals(0, up.getMinY(), 1e-9);
    assertEquals(10, up.getMaxY(), 1e-9);
  }

  /**
   * With strokes of h/7 counters are about as wide: h = 7 for a cutter of 1 mm (as drawn here 7).
   */
  @Test
  void legibility_needsStemsAndCountersAsWideAsTheCutter() throws IOException {
    Legibility built = new Legibility(new StrokeTypeface(1.05), 1);
    double needed = built.neededMm("HOLE");
    assertTrue(needed > 4 && needed < 9, needed + " mm");
    assertTrue(built.readable("HOLE", needed) && !built.readable("HOLE", needed - 0.2));
    // Stems of a seventh of the height: closed form.
    assertEquals(7, new Legibility(made(), 1).neededMm("HL"), 0.15);
  }

  @Test
  void names_keepOffEachOtherAndTheRim() {
    NameLayout layout = new NameLayout(new Box(0, 0, 40, 20), 1);
    Geometry name = new GeometryFactory().toGeometry(new Envelope(0, 12, 0, 3));
    Envelope right = layout.place(name, 10, 10, 1).orElseThrow().getEnvelopeInternal();
    assertEquals(new Envelope(11, 23, 8.5, 11.5), right);
    Envelope left = layout.place(name, 39, 15, 1).orElseThrow().getEnvelopeInternal();
    assertEquals(38, left.getMaxX(), 1e-9);
    assertEquals(Optional.empty(), layout.place(name, 17, 10, 0));
  }

  @Test
  void scaleBar_isAsLongAsTheGround() {
    Geometry bar = MapSigns.scaleBar(30, 2500, 1.5, STROKES, 5);
    assertEquals(30, bar.getEnvelopeInternal().getWidth(), 1e-9);
    assertEquals("2.5 km", MapSigns.label(2500));
    assertEquals("500 m", MapSigns.label(500));
  }

  @Test
  void northArrow_pointsNorth() {
    Geometry arrow = MapSigns.northArrow(20, STROKES, 0);
    assertTrue(covers(arrow, 0, 12) && covers(arrow, -4, 0.8) && !covers(arrow, -4, 12));
    Envelope turned = MapSigns.northArrow(20, STROKES, 90).getEnvelopeInternal();
    assertTrue(turned.getMinX() < -19 && turned.getMaxX() < 1);
  }
}
