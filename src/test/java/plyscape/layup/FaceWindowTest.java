package plyscape.layup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Windows of faces, by hand from src/contract.md, section 3. */
class FaceWindowTest {

  /** Needed at an edge: the larger of 0.10 and sqrt(0.03^2 + 0.05^2 + n 0.05^2). */
  @Test
  void window_isThePlyLessItsClearancesLessTheSanding() {
    Layup layup = Layups.of(0.05, 0, 0.05, 1.0, 1.0, 1.0);
    CutAllowance cut = Layups.standard();
    List<FaceWindow> windows = FaceWindow.of(DepthModel.depths(layup, cut, false), cut);
    double above = Math.max(0.10, Math.sqrt(0.0009 + 0.0025 + 0.0025));
    double below = Math.max(0.10, Math.sqrt(0.0009 + 0.0025 + 2 * 0.0025));
    assertFalse(windows.get(0).open(), "the top ply is left");
    assertEquals(0, windows.get(0).upperMm());
    assertEquals(1.05 + above - 0.10, windows.get(1).upperMm(), 1e-9);
    assertEquals(2.05 - below - 0.10, windows.get(1).lowerMm(), 1e-9);
  }

  @Test
  void floorUnderTheDeepestPly_isKept() {
    Layup layup = Layups.of(0, 0, 0, 1.0, 1.0, 1.5);
    CutAllowance cut = new CutAllowance(0.10, Method.RSS, 0, new Sanding(0.10, 0), Top.LEAVE, 0.8);
    FaceWindow last = FaceWindow.of(DepthModel.depths(layup, cut, false), cut).get(2);
    assertEquals(2.0 + 0.10 - 0.10, last.upperMm(), 1e-9);
    assertEquals(3.5 - 0.8, last.lowerMm(), 1e-9);
  }

  @Test
  void plyWithoutRoom_staysAtItsTarget() {
    Layup layup = Layups.of(0, 0, 0.3, 1.0, 0.4, 2.0);
    CutAllowance cut = Layups.standard();
    Depths depths = DepthModel.depths(layup, cut, false);
    FaceWindow thin = FaceWindow.of(depths, cut).get(1);
    assertFalse(depths.of(2).reliable());
    assertFalse(thin.open());
    assertEquals(depths.of(2).targetMm(), thin.upperMm());
  }

  /**
   * The risk at an end of the window, every tolerance 3 sigma (src/contract.md, section 3): with a
   * clearance of exactly the tolerance the near tail is Q(3) = 0.00134990 (references.md, section
   * 6), and the far one is as good as nothing.
   */
  @Test
  void riskAtTheWindowsEnd_isTheNearTail() {
    Layup layup = Layups.of(0, 0, 0, 1.0, 1.0, 1.0);
    CutAllowance cut = new CutAllowance(0, Method.RSS, 0.12, new Sanding(0.10, 0.09), Top.LEAVE, 0);
    Depths depths = DepthModel.depths(layup, cut, false);
    FaceWindow window = FaceWindow.of(depths, cut).get(1);
    PanelPoint anywhere = new PanelPoint(10, 20);
    assertEquals(0.00134990, depths.risk(2, anywhere, window.upperMm(), true), 1e-8);
    assertEquals(0.00134990, depths.risk(2, anywhere, window.lowerMm(), true), 1e-8);
    assertTrue(depths.of(2).risk() < 1e-6);
    assertEquals(0, depths.risk(1, anywhere, 0, true));
  }

  @Test
  void windowsOfRandomLayups_holdTheTargetAndNeverMeet() {
    for (long seed = 1; seed <= 200; seed++) {
      Layup layup = Layups.random(new Random(seed));
      CutAllowance cut = Layups.standard();
      Depths depths = DepthModel.depths(layup, cut, true);
      List<FaceWindow> windows = FaceWindow.of(depths, cut);
      for (int i = 0; i < windows.size(); i++) {
        FaceWindow window = windows.get(i);
        double target = depths.of(i + 1).targetMm();
        boolean floor = depths.of(depths.plies()).bottomMm() - target >= cut.minimumFloorMm();
        if (floor) {
          assertTrue(
              window.upperMm() <= target + 1e-9 && window.lowerMm() >= target - 1e-9,
              "seed " + seed + " ply " + (i + 1));
        }
        assertTrue(
            i == 0 || window.upperMm() >= windows.get(i - 1).lowerMm() - 1e-9,
            "seed " + seed + " ply " + (i + 1));
      }
    }
  }
}
