package plyscape.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class TemplateTest {

  @Test
  void gaps_takeTheirValuesInOrder() {
    assertEquals(
        "ply 3 (oak) is 0.90 mm, 0.9 at most, 5 % of it",
        Template.fill("ply %d (%s) is %.2f mm, %.2t at most, %.0f %% of it", 3, "oak", .9, .9, 5));
    assertEquals("100 %", Template.fill("%s %%", 100));
    assertEquals("as it is", Template.fill("as it is"));
  }

  @Test
  void numbersThatAreNone_areSaid() {
    assertEquals("NaN mm", Template.fill("%.3f mm", Double.NaN));
  }

  @Test
  void gapsThatDontAgreeWithTheValues_areRefused() {
    for (String pattern : new String[] {"%s and %s", "none", "%", "%.3", "%x"}) {
      assertThrows(IllegalArgumentException.class, () -> Template.fill(pattern, "one"), pattern);
    }
  }
}
