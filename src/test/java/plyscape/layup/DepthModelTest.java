package plyscape.layup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.layup.statistics.ColourRisk;
import plyscape.layup.statistics.NormalTail;

/** Hand-worked layups, one for each rule of section 3 of src/contract.md. */
class DepthModelTest {

  private static final double EXACT = 1e-12;

  @Test
  void nominal_gluelinesCount() {
    Depths d =
        DepthModel.depths(Layups.of(0.05, 0, 0, 0.6, 0.8, 1.0), Layups.bare(Method.RSS), false);
    assertEquals(0, d.of(1).topMm());
    assertEquals(0.6, d.of(1).bottomMm(), EXACT);
    assertEquals(0.65, d.of(2).topMm(), EXACT);
    assertEquals(1.45, d.of(2).bottomMm(), EXACT);
    assertEquals(1.50, d.of(3).topMm(), EXACT);
    assertEquals(2.50, d.of(3).bottomMm(), EXACT);
    assertEquals(1.05, d.of(2).midMm(), EXACT);
    assertEquals(0.4, d.of(2).availableMm(), EXACT);
  }

  @Test
  void measuredThickness_scalesPliesAndGlueLinesAlike() {
    Layup layup = Layups.of(0.05, 0, 0, 0.6, 0.8, 1.0).withThickness(2.4, 0);
    Depths d = DepthModel.depths(layup, Layups.bare(Method.RSS), false);
    assertEquals(0.6 * 0.96, d.of(1).bottomMm(), EXACT);
    assertEquals(0.65 * 0.96, d.of(2).topMm(), EXACT);
    assertEquals(2.4, d.of(3).bottomMm(), EXACT);
    assertEquals(2.4, DepthModel.thicknessMm(layup), EXACT);
    assertEquals(2.5, DepthModel.nominalThicknessMm(layup), EXACT);
  }

  @Test
  void thicknessFactor_limitsAreInclusiveAndBothTotalsNamed() {
    Layup plain = Layups.of(0.05, 0, 0, 0.6, 0.8, 1.0);
    for (double factor : new double[] {0.85, 1.10}) {
      DepthModel.depths(plain.withThickness(2.5 * factor, 0), Layups.bare(Method.RSS), false);
    }
    for (double factor : new double[] {0.849, 1.101}) {
      Layup layup = plain.withThickness(2.5 * factor, 0);
      InputFault fault =
          assertThrows(
              InputFault.class, () -> DepthModel.depths(layup, Layups.bare(Method.RSS), false));
      assertTrue(
          fault.getMessage().contains("2.500")
              && fault.getMessage().contains("--accept-thickness"));
      DepthModel.depths(layup, Layups.bare(Method.RSS), true);
    }
  }

  @Test
  void oneExactBottom_scalesAll() {
    // Nominal bottoms 1.0, 2.1, 3.2, 4.3. Measured: ply 2 at 2.31, so that the press made it 1.1.
    Layup layup = Layups.of(0.1, 0, 0, 1, 1, 1, 1).withBottoms(new TreeMap<>(Map.of(2, 2.31)), 0);
    Depths d = DepthModel.depths(layup, Layups.bare(Method.RSS), false);
    assertEquals(1.1, d.of(1).bottomMm(), EXACT);
    assertEquals(1.21, d.of(2).topMm(), EXACT);
    assertEquals(2.31, d.of(2).bottomMm(), EXACT);
    assertEquals(2.42, d.of(3).topMm(), EXACT);
    assertEquals(4.73, d.of(4).bottomMm(), EXACT);
  }

  @Test
  void measuredBottomsAndThickness_stretchBelowIncludesTheGlueLineUnderTheMeasuredPly() {
    // Below ply 2 the nominal 0.1 + 1 + 0.1 + 1 = 2.2 must fit into 4.29 - 2.31 = 1.98: factor 0.9.
    Layup layup =
        Layups.of(0.1, 0, 0, 1, 1, 1, 1)
            .withBottoms(new TreeMap<>(Map.of(2, 2.31)), 0)
            .withThickness(4.29, 0);
    Depths d = DepthModel.depths(layup, Layups.bare(Method.RSS), false);
    assertEquals(2.31 + 0.09, d.of(3).topMm(), EXACT);
    assertEquals(2.31 + 0.99, d.of(3).bottomMm(), EXACT);
    assertEquals(4.29, d.of(4).bottomMm(), EXACT);
  }

  @Test
  void measuredDepthsOutOfOrder_faultNamesTheTwo() {
    Layup layup = Layups.of(0, 0, 0, 1, 1, 1).withBottoms(new TreeMap<>(Map.of(1, 1.2, 2, 1.2)), 0);
    InputFault fault =
        assertThrows(
            InputFault.class, () -> DepthModel.depths(layup, Layups.bare(Method.RSS), false));
    assertTrue(fault.getMessage().contains("ply 1") && fault.getMessage().contains("ply 2"));
    Layup past =
        Layups.of(0, 0, 0, 1, 1, 1)
            .withBottoms(new TreeMap<>(Map.of(2, 3.1)), 0)
            .withThickness(3.0, 0);
    fault =
        assertThrows(
            InputFault.class, () -> DepthModel.depths(past, Layups.bare(Method.RSS), false));
    assertTrue(fault.getMessage().contains("measured thickness"));
  }

  /** Two readings of the panel's bottom weigh by their tolerances; far apart they are a fault. */
  @Test
  void bottomFaceMeasuredTwice_weightedMean() {
    Layup plain = Layups.of(0, 0, 0, 1, 1, 1);
    Layup agree = plain.withBottoms(new TreeMap<>(Map.of(3, 3.02)), 0.02).withThickness(3.05, 0.04);
    assertEquals(3.026, DepthModel.thicknessMm(agree), 1e-9);
    Layup differ = plain.withBottoms(new TreeMap<>(Map.of(3, 3.0)), 0.02).withThickness(3.05, 0.02);
    assertThrows(InputFault.class, () -> DepthModel.depths(differ, Layups.bare(Method.RSS), false));
  }

  @Test
  void readingsFarFromNominal_namedWithThePanelsThickness() {
    Layup layup =
        Layups.of(0.04, 0, 0.05, 1, 1, 1).withBottoms(new TreeMap<>(Map.of(2, 14.0)), 0.02);
    String message =
        assertThrows(
                InputFault.class, () -> DepthModel.depths(layup, Layups.bare(Method.RSS), false))
            .getMessage();
    assertTrue(message.contains("14.000") && message.contains("3.080"), message);
    DepthModel.depths(layup, Layups.bare(Method.RSS), true);
  }

  @Test
  void tolerance_unmeasured_addsUpFromTheTop() {
    Layup layup = Layups.of(0.05, 0.02, 0.05, 0.6, 0.6, 0.6);
    PressedPanel p = PressedPanel.of(layup, false);
    assertEquals(0, p.toleranceMm(0, p.centre(), Method.RSS));
    assertEquals(0.05, p.toleranceMm(1, p.centre(), Method.RSS), EXACT);
    assertEquals(Math.sqrt(0.0025 + 0.0004), p.toleranceMm(2, p.centre(), Method.RSS), EXACT);
    assertEquals(0.07, p.toleranceMm(2, p.centre(), Method.WORST), EXACT);
    assertEquals(
        Math.sqrt(3 * 0.0025 + 2 * 0.0004), p.toleranceMm(5, p.centre(), Method.RSS), EXACT);
    assertEquals(0.19, p.toleranceMm(5, p.centre(), Method.WORST), EXACT);
  }

  /** By hand: with the total read, a boundary's error is (1 - f) of the layers above, f below. */
  @Test
  void tolerance_totalRead_bothMethods() {
    List<Ply> plies =
        List.of(
            new Ply(1, "a", 0, 1, 0.3, 0, ""),
            new Ply(2, "b", 0, 1, 0.3, 0, ""),
            new Ply(3, "c", 0, 1, 0.4, 0, ""));
    Layup layup =
        new Layup("l", "", plies, new GlueLine(0, 0), Measured.NOTHING, 0).withThickness(3.0, 0.1);
    PressedPanel p = PressedPanel.of(layup, false);
    double squares = 0.09 * 4 / 9 + (0.09 + 0.16) / 9 + 0.01 / 9;
    assertEquals(Math.sqrt(squares), p.toleranceMm(1, p.centre(), Method.RSS), EXACT);
    assertEquals(
        0.3 * 2 / 3 + 0.7 / 3 + 0.1 / 3, p.toleranceMm(1, p.centre(), Method.WORST), EXACT);
    assertEquals(0.1, p.toleranceMm(5, p.centre(), Method.RSS), EXACT);
    assertEquals(0.1, p.toleranceMm(5, p.centre(), Method.WORST), EXACT);
  }

  @Test
  void needed_combinesBoundaryAndCutErrorsByTheMethod_orTheMinimum() {
    Layup layup = Layups.of(0, 0, 0.12, 0.6, 0.6, 0.6).withFlatness(0.04);
    CutAllowance rss =
        new CutAllowance(0.10, Method.RSS, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 0);
    PlyDepth top = DepthModel.depths(layup, rss, false).of(1);
    assertEquals(0.10, top.neededTopMm(), EXACT);
    assertEquals(Math.sqrt(0.0144 + 0.0016 + 0.0009 + 0.0025), top.neededBottomMm(), EXACT);
    CutAllowance worst =
        new CutAllowance(0.10, Method.WORST, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 0);
    PlyDepth second = DepthModel.depths(layup, worst, false).of(2);
    assertEquals(0.12 + 0.12, second.neededTopMm(), EXACT);
    assertEquals(0.24 + 0.12, second.neededMm(), EXACT);
    assertFalse(second.reliable());
  }

  @Test
  void target_isMidLessSanding_neverAboveTheTopFace() {
    Layup layup = Layups.of(0, 0, 0, 0.6, 0.6, 0.6);
    CutAllowance leave = new CutAllowance(0.1, Method.RSS, 0, new Sanding(0.1, 0), Top.LEAVE, 0);
    assertEquals(0, DepthModel.depths(layup, leave, false).of(1).targetMm());
    assertEquals(0.8, DepthModel.depths(layup, leave, false).of(2).targetMm(), EXACT);
    CutAllowance mid = new CutAllowance(0.1, Method.RSS, 0, new Sanding(0.1, 0), Top.MID, 0);
    assertEquals(0.2, DepthModel.depths(layup, mid, false).of(1).targetMm(), EXACT);
    CutAllowance muchSanding =
        new CutAllowance(0.1, Method.RSS, 0, new Sanding(0.4, 0), Top.MID, 0);
    assertEquals(0, DepthModel.depths(layup, muchSanding, false).of(1).targetMm(), EXACT);
  }

  @Test
  void floor_countsWoodUnderTheDeepestCut() {
    Layup layup = Layups.of(0, 0, 0, 0.9, 0.9, 0.9);
    CutAllowance allowance = Layups.standard();
    Depths d = DepthModel.depths(layup, allowance, false);
    assertEquals(0.45 + 0.1, d.floorMm(3), EXACT);
    FloorCheck.require(d, 2, allowance);
    JobFault fault = assertThrows(JobFault.class, () -> FloorCheck.require(d, 3, allowance));
    assertTrue(
        fault.getMessage().contains("0.550") && fault.getMessage().contains("minimum_floor"));
    String others = d.of(1).ply().name() + "," + d.of(2).ply().name();
    assertTrue(fault.getMessage().contains("--plies " + others), fault.getMessage());
    assertFalse(fault.getMessage().contains("inch"), fault.getMessage());
  }

  /** 0.9 mm are 0.0354 inches. */
  @Test
  void layupInInches_isSuspected() {
    Depths d =
        DepthModel.depths(Layups.of(0, 0, 0, 0.0354, 0.0354, 0.0354), Layups.standard(), false);
    JobFault fault =
        assertThrows(JobFault.class, () -> FloorCheck.require(d, 2, Layups.standard()));
    assertTrue(
        fault.getMessage().contains("all 3 plies together are only 0.11 mm thick"),
        fault.getMessage());
  }

  /**
   * Stack-up, published case as quoted in references.md section 6: gap part and three plates, RSS
   * 0.00794, worst 0.015.
   */
  @Test
  void combine_publishedStackUp() {
    assertEquals(0.0079373, DepthModel.combine(Method.RSS, 0.005, 0.003, 0.002, 0.005), 5e-8);
    assertEquals(0.015, DepthModel.combine(Method.WORST, 0.005, 0.003, 0.002, 0.005), EXACT);
    double[] nine = {.1, .1, .1, .1, .1, .1, .1, .1, .1};
    assertEquals(0.3162, DepthModel.combine(Method.RSS, 0.1, nine), 5e-5);
    assertEquals(1.0, DepthModel.combine(Method.WORST, 0.1, nine), EXACT);
  }

  /**
   * The panel of references.md section 6 (derived there): 7 plies 0.6 +-0.05, 6 glue lines 0.05
   * +-0.02.
   */
  @Test
  void panelOfTheReferences_totalAndRisk() {
    Layup layup = Layups.of(0.05, 0.02, 0.05, 0.6, 0.6, 0.6, 0.6, 0.6, 0.6, 0.6);
    PressedPanel p = PressedPanel.of(layup, false);
    assertEquals(4.5, p.depthMm(13), EXACT);
    assertEquals(0.47, p.toleranceMm(13, p.centre(), Method.WORST), EXACT);
    assertEquals(0.1411, p.toleranceMm(13, p.centre(), Method.RSS), 5e-5);
    double tolerance =
        3 * Math.sqrt(Math.pow(p.toleranceMm(13, p.centre(), Method.RSS) / 3, 2) + 0.05 * 0.05);
    assertEquals(3 * 0.06864, tolerance, 3 * 5e-6);
    assertEquals(1.24e-5, ColourRisk.of(0.30, tolerance, 0.30, tolerance), 5e-8);
  }

  /** Normal upper tail, values of references.md section 6. */
  @Test
  void normalTail_table() {
    double[][] table = {
      {1, 0.158655, 5e-7},
      {1.5, 0.066807, 5e-7},
      {1.6449, 0.05, 5e-6},
      {1.96, 0.025, 5e-6},
      {2, 0.0227501, 5e-8},
      {2.3263, 0.01, 2e-6},
      {2.5758, 0.005, 5e-7},
      {3, 0.00134990, 5e-9},
      {4, 3.16712e-5, 5e-11},
      {6, 9.8659e-10, 5e-14}
    };
    for (double[] row : table) {
      assertEquals(row[1], NormalTail.above(row[0]), row[2], "z " + row[0]);
      assertEquals(1 - row[1], NormalTail.above(-row[0]), row[2], "z " + -row[0]);
      assertEquals(row[0], NormalTail.inverse(NormalTail.above(row[0])), 1e-9);
    }
    assertEquals(NormalTail.above(2.5 - 1e-12), NormalTail.above(2.5), 1e-13);
  }

  @Test
  void risk_isZeroForATopPlyLeftUncut_andUsesRssWhateverTheMethod() {
    Layup layup = Layups.of(0.05, 0.02, 0.15, 0.6, 0.6, 0.6).withFlatness(0.1);
    Depths rss = DepthModel.depths(layup, Layups.standard(), false);
    CutAllowance s = Layups.standard();
    CutAllowance worst =
        new CutAllowance(s.minimumMm(), Method.WORST, s.zErrorMm(), s.sanding(), Top.MID, 1);
    Depths other = DepthModel.depths(layup, worst, false);
    assertEquals(0, rss.of(1).risk());
    assertTrue(other.of(1).risk() > 0);
    assertEquals(rss.of(2).risk(), other.of(2).risk(), EXACT);
  }
}
