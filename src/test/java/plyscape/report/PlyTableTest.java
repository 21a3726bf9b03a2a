package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import plyscape.render.HandPlan;

class PlyTableTest {

  @Test
  void narrowTerminals_getFewerColumns_neverBrokenLines() {
    String all = PlyTable.text(HandPlan.landscape(), Integer.MAX_VALUE);
    assertTrue(all.lines().anyMatch(line -> line.length() > 80), all);
    assertTrue(all.contains("area mm2") && all.contains("bottom"), all);
    String narrow = PlyTable.text(HandPlan.landscape(), 80);
    assertTrue(narrow.lines().allMatch(line -> line.length() <= 80), narrow);
    for (String kept : new String[] {"name", "cut to", "elevation m", "verdict"}) {
      assertTrue(narrow.contains(kept), kept + " in " + narrow);
    }
    assertFalse(narrow.contains("area mm2"), narrow);
    String least = PlyTable.text(HandPlan.landscape(), 10);
    assertTrue(least.contains("cut to") && least.contains("verdict"), least);
    assertEquals(all, PlyTable.text(HandPlan.landscape(), 500));
  }
}
