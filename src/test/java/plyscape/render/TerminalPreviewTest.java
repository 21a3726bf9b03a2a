package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import plyscape.render.TerminalPreview.Colour;

class TerminalPreviewTest {

  /**
   * 100 x 80 mm in 20 columns of 5 mm and 8 rows of 10 mm; letters at (2.5, 75), (7.5, 75) and so
   * on.
   */
  @Test
  void letters_drawTheHandMadePlan() {
    String art = TerminalPreview.text(HandPlan.landscape(), 20, Colour.NONE);
    String[] lines = art.split("\n");
    // Row middles are at 75 (the border's edge, so left open), 65, 55, 45, 35, 25, 15, 5.
    assertEquals(".AAAAAAAAAAAAADDDDA.", lines[1]);
    assertEquals(".AAABBBBBBBBAADDDDA.", lines[2]);
    assertEquals(".AAABBAAAABBAADDDDA.", lines[3].replace('C', 'A'));
    assertEquals(".AAAAAAAAAAAAADDDDA.", lines[6]);
    assertTrue(art.contains("\n A  1 meadow, uncut, 60.9 %\n"), art);
    assertTrue(art.contains(" D  4 deep blue, cut to 3.400 mm, 19.0 %\n"), art);
    assertTrue(art.chars().allMatch(c -> c == '\n' || c >= 32 && c < 127), "plain ASCII");
  }

  @Test
  void halfBlocks_carryTheColoursOfBothHalves() {
    String art = TerminalPreview.text(HandPlan.landscape(), 20, Colour.FULL);
    assertTrue(
        art.contains("\u001b[38;2;31;78;121m") && art.contains("\u001b[48;2;31;78;121m"),
        "deep blue above and below");
    assertEquals(8 * 20, art.chars().filter(c -> c == '\u2580').count());
    assertTrue(
        TerminalPreview.text(HandPlan.landscape(), 20, Colour.CUBE).contains("\u001b[38;5;24m"),
        "nearest of the cube: 0, 95, 135");
  }

  @Test
  void everyColouredLine_endsWithAReset() {
    for (String line : TerminalPreview.text(HandPlan.landscape(), 40, Colour.CUBE).split("\n")) {
      int reset = line.lastIndexOf("\u001b[0m");
      assertTrue(reset >= line.lastIndexOf("\u001b[48"), line);
    }
  }

  @Test
  void namesFromInputs_cantSteerTheTerminal() {
    String art = TerminalPreview.text(HandPlan.landscape("a\u001b[2Jb"), 20, Colour.NONE);
    assertFalse(art.contains("\u001b"));
  }

  @Test
  void colour_byTheUsualVariables() {
    assertEquals(Colour.FULL, TerminalPreview.colour("truecolor", "xterm"));
    assertEquals(Colour.CUBE, TerminalPreview.colour(null, "xterm-256color"));
    assertEquals(Colour.NONE, TerminalPreview.colour(null, "dumb"));
    assertEquals(Colour.NONE, TerminalPreview.colour("", null));
  }
}
