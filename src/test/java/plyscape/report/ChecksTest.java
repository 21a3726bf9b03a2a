package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.layup.advice.BalanceCheck;
import plyscape.plan.PanelPlan;
import plyscape.render.HandPlan;

/** What the page finds about wood and cutters, on a plan whose figures are known. */
class ChecksTest {

  private static final PanelPlan PLAN = HandPlan.make();

  /** The same rules, and the same words, as on the pressing sheet. */
  @Test
  void wood_isHeldToTheRulesOfThePressingSheet() {
    List<Finding> found = WoodCheck.of(PLAN.landscape());
    List<BalanceCheck.Finding> broken = BalanceCheck.of(PLAN.job().layup());
    assertEquals(1, broken.size(), "poplar faces a ply whose wood isn't named");
    Finding said = found.get(0);
    assertFalse(said.good());
    assertEquals(
        "Ply 1 (meadow) and ply 5 (backing) face each other across the centre but differ in"
            + " wood (poplar and none given); "
            + broken.get(0).mend()
            + ".",
        said.text());
    assertTrue(found.stream().anyMatch(f -> f.good() && f.text().startsWith("5 plies: odd")));
    assertTrue(found.stream().anyMatch(f -> f.good() && f.text().contains("grain of neighbours")));
    assertFalse(found.stream().anyMatch(f -> f.good() && f.text().contains("both sides")));
  }

  @Test
  void cutters_areHeldToTheirOwnDepths() {
    List<Finding> found = CutterCheck.of(PLAN);
    assertTrue(
        found.contains(new Finding(true, "end mill 3: flutes of 12 mm, its deepest cut 3.40 mm.")));
    assertTrue(
        found.stream().anyMatch(f -> f.text().startsWith("end mill 1 is left in the drawer")));
    // 1800 / (16000 x 2) = 0.056 mm a tooth, in the usual range at 3 mm.
    assertTrue(
        found.contains(
            new Finding(true, "end mill 3 takes 0.056 mm a tooth (usual 0.03 to 0.08).")));
  }
}
