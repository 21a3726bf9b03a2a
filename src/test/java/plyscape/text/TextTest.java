package plyscape.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TextTest {

  private static final List<String> KEYS = List.of("width", "height", "border", "glue_line");

  @Test
  void nearestName_findsDroppedSwappedAndChangedLetters() {
    assertEquals(Optional.of("width"), NearestName.of("widht", KEYS));
    assertEquals(Optional.of("border"), NearestName.of("boarder", KEYS));
    assertEquals(Optional.of("glue_line"), NearestName.of("Glue Line", KEYS));
    assertEquals(Optional.of("height"), NearestName.of("heigth", KEYS));
  }

  @Test
  void nearestName_isSilentWhenNothingIsNear() {
    assertEquals(Optional.empty(), NearestName.of("colour", KEYS));
    assertEquals(Optional.empty(), NearestName.of("w", List.of("oak")));
    assertEquals("known are oak", NearestName.hint("w", List.of("oak")));
    assertEquals(
        "did you mean \"oak\"? known are oak, ash", NearestName.hint("oka", List.of("oak", "ash")));
  }

  @Test
  void nearestName_copesWithVeryLongNames() {
    assertEquals(Optional.empty(), NearestName.of("x".repeat(1_000_000), KEYS));
  }

  @Test
  void table_alignsByWhatTheTerminalShows() {
    String text =
        new TextTable()
            .left("ply")
            .right("mm")
            .row("oak", "0.9")
            .row("Eiche\u0301", "12.25")
            .text();
    assertEquals("ply       mm\n-----  -----\noak      0.9\nEiche\u0301  12.25\n", text);
  }

  @Test
  void table_refusesRowsOfTheWrongLength() {
    assertThrows(IllegalArgumentException.class, () -> new TextTable().left("a").row("1", "2"));
  }

  @Test
  void visible_escapesWhatATerminalWouldObey() {
    assertEquals("\\u001b[31mred\\n", Visible.line("\u001b[31mred\n"));
    assertEquals("a\nb\\u0007", Visible.lines("a\nb\u0007"));
    assertEquals("\\u202eabc", Visible.line("\u202eabc"));
    assertEquals("\\u009b2J", Visible.line("\u009b2J"));
    assertEquals("M\u00fchlbach \u6c34", Visible.line("M\u00fchlbach \u6c34"));
    assertTrue(Visible.line("\ud800").startsWith("\\ud800"));
  }

  /** Right-to-left overrides (Unicode UAX 9, section 2.2) could make a page show another name. */
  @Test
  void markup_takesNeitherMarksNorTurningCharacters() {
    assertEquals("&lt;b a=&quot;&#39;&amp;&gt;", Markup.escape("<b a=\"'&>"));
    assertEquals("a\ufffdb\ufffdc\ufffd", Markup.escape("a\u202eb\u2066c\u001b"));
    assertEquals("\u05d0\u05d1", Markup.escape("\u05d0\u05d1"));
  }

  /**
   * By contrast ratios after WCAG 2 (relative luminance of sRGB): on 0x777777 black has 4.69 and
   * white 4.48, on 0x707070 4.24 and 4.95.
   */
  @Test
  void contrast_takesTheInkThatReadsBetter() {
    assertTrue(Contrast.blackOn(0x777777));
    assertFalse(Contrast.blackOn(0x707070));
    assertTrue(Contrast.blackOn(0xffff00));
    assertFalse(Contrast.blackOn(0x0000ff));
    assertTrue(Contrast.blackOn(0xff0000), "5.25 against 4.00");
  }
}
