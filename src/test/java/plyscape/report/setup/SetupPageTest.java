package plyscape.report.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.render.HandPlan;
import plyscape.report.Cautions;

/** What the set-up sheet says; that it fits one sheet is seen in a browser. */
class SetupPageTest {

  private static final String PAGE = SetupPage.text(HandPlan.make());
  private static final String WORDS =
      PAGE.substring(PAGE.indexOf("<body>"))
          .replaceAll("<[^>]*>", " ")
          .replace("&#39;", "'")
          .replaceAll("\\s+", " ");

  @Test
  void facts_areThoseOfPanelMachineAndPrograms() {
    for (String part :
        List.of(
            "Set-up: Hand-made &amp; small",
            "Stock 100 x 80 mm, 5.00 mm thick, 5 plies",
            "Up ply 1, meadow; its grain 0° from X",
            "Zero X0 Y0 at the panel's lower left corner, Z0 on its top face",
            // The tip of the cutter of 3 mm comes to 88.5; its edge to 90, of 100.
            "X 0.0 to 88.5, Y 0.0 to 68.5, Z -3.40 to 4.00 mm",
            "needs X 88.5 of 300, Y 68.5 of 300, Z 7.4 of 80 mm",
            "free edges left 20.0, right 10.0, near 10.0, far 10.0 mm",
            "1.60 mm of wood stay under the deepest cut",
            // 86.75 s, and a minute and 5 s for the one cutter.
            "1 min 27 s of running, 2 min 32 s with the cutters put in",
            "Z0 set with this cutter")) {
      assertTrue(WORDS.contains(part), "not on the sheet: " + part + "\n" + WORDS);
    }
  }

  @Test
  void rows_areTheProgramsInCuttingOrder() {
    assertTrue(
        WORDS.contains(
            "01-end-mill-3.nc clears down to barley, deep blue end mill 3 flat, 3 mm, 2 flutes of"
                + " 12 mm over 3.4 16000 1800 500 2 -3.400 1 min 27 s"),
        WORDS);
    assertEquals(2, PAGE.split("<tr", -1).length - 1, "the head and one program");
    assertEquals(7, PAGE.split("class=\"box\"", -1).length - 1, "six ticks before, one a program");
  }

  @Test
  void page_needsNothingAndRunsNothing() {
    String page = SetupPage.text(HandPlan.make("<b class=evil>\"meadow\"</b>"));
    assertFalse(page.contains("<b class=evil>"));
    assertFalse(page.contains("<script") || page.contains("href=") || page.contains("src="));
    Cautions.ALL.forEach(
        caution -> assertTrue(page.contains(plyscape.text.Markup.escape(caution)), caution));
    assertEquals(PAGE, SetupPage.text(HandPlan.make()), "same plan, same page");
  }
}
