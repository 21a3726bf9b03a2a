package plyscape.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.GlueLine;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.Method;
import plyscape.layup.Ply;
import plyscape.layup.Sanding;
import plyscape.layup.Top;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.task.PocketLevel;

class CouponTest {

  private static final CutAllowance ALLOWANCE =
      new CutAllowance(0.1, Method.RSS, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 1);
  private static final Machine MACHINE = Workshop.ROUTER;
  private static final Tool TOOL = tool(3, 12);

  private static Tool tool(double diameter, double flutes) {
    return Workshop.cutter("end mill", Tool.Shape.FLAT, diameter, flutes);
  }

  private static Layup layup(double... thicknesses) {
    List<Ply> plies = new ArrayList<>();
    for (double t : thicknesses) {
      plies.add(new Ply(plies.size() + 1, "p" + (plies.size() + 1), 0, t, 0.04, 0, ""));
    }
    return new Layup("l", "test", plies, new GlueLine(0.04, 0.01), Measured.NOTHING, 0.08);
  }

  private static Coupon coupon(Layup layup, Coupon.Wish wish, Tool tool, Warnings warnings) {
    return Coupon.of(DepthModel.depths(layup, ALLOWANCE, false), wish, tool, MACHINE, warnings);
  }

  @Test
  void step_isTheFinestThatFits_neverMoreThanAFifthOfTheThinnestPly() {
    Warnings none = new Warnings();
    // Room enough: twice the Z error of 0.03.
    assertEquals(
        0.06,
        coupon(layup(0.9, 0.9, 0.9), new Coupon.Wish(120, 80, null, 0.3), TOOL, none).stepMm(),
        1e-9);
    // Room for 28 pads of 5 x 8 mm: the coarsest step would be 0.18, 27 pads of 0.08 are the finest
    // that fit.
    Coupon small = coupon(layup(0.9, 0.9, 0.9), new Coupon.Wish(82, 31, null, 0.3), TOOL, none);
    assertEquals(0.08, small.stepMm(), 1e-9);
    assertTrue(small.pads().size() <= 28);
    // No room to spare: a fifth of 0.4 mm.
    assertEquals(
        0.08,
        coupon(layup(0.9, 0.4, 0.9), new Coupon.Wish(62, 31, null, 0.3), TOOL, none).stepMm(),
        1e-9);
    // 0.25 mm: a fifth is 0.05; half a step plus 0.03 within it leaves 0.04.
    assertEquals(
        0.04,
        coupon(layup(0.9, 0.25, 0.9), new Coupon.Wish(240, 120, null, 0.3), TOOL, none).stepMm(),
        1e-9);
    assertEquals(List.of(), none.list());
  }

  @Test
  void pads_reachPastTheLastBoundary_andStayOnTheOffcut() {
    Layup layup = layup(0.9, 0.9, 0.9, 0.9, 0.9);
    Depths depths = DepthModel.depths(layup, ALLOWANCE, false);
    Coupon c = coupon(layup, new Coupon.Wish(80, 60, null, 0.3), TOOL, new Warnings());
    assertTrue(c.deepestMm() >= depths.of(5).topMm() + depths.of(5).topToleranceMm());
    assertTrue(depths.of(5).bottomMm() - c.deepestMm() >= 0.3);
    assertEquals(List.of(), c.unseen());
    for (int i = 0; i < c.pads().size(); i++) {
      assertEquals(c.stepMm() * (i + 1), c.pads().get(i).depthMm(), 1e-9);
    }
    assertTrue(
        c.carved().minX() >= 6
            && c.carved().maxX() <= 74
            && c.carved().minY() >= 6
            && c.carved().maxY() <= 54);
  }

  @Test
  void pockets_nest_andTheirPadsTileThem() {
    Coupon c =
        coupon(
            layup(0.9, 0.9, 0.9, 0.9, 0.9),
            new Coupon.Wish(80, 60, null, 0.3),
            TOOL,
            new Warnings());
    List<PocketLevel> levels = c.levels();
    double below = 0;
    for (int k = levels.size() - 1; k >= 0; k--) {
      below += levels.get(k).exposed().getArea();
      assertEquals(below, levels.get(k).pocket().getArea(), 1e-6);
      assertTrue(k == 0 || levels.get(k - 1).pocket().covers(levels.get(k).pocket()));
    }
  }

  @Test
  void floorTooThick_deepBoundaryIsNamed() {
    Warnings warnings = new Warnings();
    Coupon c = coupon(layup(0.9, 0.9, 0.9), new Coupon.Wish(120, 80, null, 1.0), TOOL, warnings);
    assertEquals(List.of(2), c.unseen());
    assertEquals("coupon-depth", warnings.list().get(0).code());
  }

  @Test
  void tooSmall_tooLong_tooDeep_saysWhatWouldDo() {
    Layup layup = layup(0.9, 0.9, 0.9, 0.9, 0.9);
    assertFault("--size 40x", layup, new Coupon.Wish(40, 40, null, 0.3), TOOL);
    assertFault("travel", layup, new Coupon.Wish(400, 40, null, 0.3), TOOL);
    assertFault("flutes", layup, new Coupon.Wish(120, 80, null, 0.3), tool(3, 2));
    assertFault("0.18 mm or less", layup, new Coupon.Wish(120, 80, 0.3, 0.3), TOOL);
    assertFault("two steps", layup, new Coupon.Wish(120, 80, null, 4.6), TOOL);
    assertFault("z_error", layup(0.9, 0.15, 0.9), new Coupon.Wish(120, 80, null, 0.3), TOOL);
    // The size that is said to do, does.
    assertTrue(
        coupon(layup, new Coupon.Wish(40, 64, null, 0.3), TOOL, new Warnings()).pads().size() > 10);
  }

  private static void assertFault(String says, Layup layup, Coupon.Wish wish, Tool tool) {
    JobFault fault = assertThrows(JobFault.class, () -> coupon(layup, wish, tool, new Warnings()));
    assertTrue(fault.getMessage().contains(says), fault.getMessage());
  }

  /**
   * A panel pressed at random is read off the coupon pad by pad, and calibrated: the boundaries
   * come back.
   */
  @Test
  void couponReadByEye_thenCalibrated_findsTheBoundaries() {
    Random random = new Random(4);
    int outside = 0;
    int all = 0;
    for (int trial = 0; trial < 300; trial++) {
      Layup layup = layup(0.9, 0.9, 0.9, 0.9, 0.9);
      Coupon c = coupon(layup, new Coupon.Wish(120, 80, null, 0.2), TOOL, new Warnings());
      double[] bottoms = new double[5];
      double at = 0;
      for (int i = 0; i < 5; i++) {
        bottoms[i] = at + 0.9 + 0.04 / 3 * random.nextGaussian();
        at = bottoms[i] + 0.04;
      }
      String csv = "ply,from,to\n";
      for (int i = 0; i < 4; i++) {
        double from = 0;
        double to = Double.NaN;
        for (Coupon.Pad pad : c.pads()) {
          from = pad.depthMm() <= bottoms[i] ? pad.depthMm() : from;
          to = Double.isNaN(to) && pad.depthMm() >= bottoms[i] + 0.04 ? pad.depthMm() : to;
        }
        csv += (i + 1) + "," + from + "," + to + "\n";
      }
      plyscape.layup.calibration.Calibration found =
          plyscape.layup.calibration.Calibration.of(
              layup,
              ReadingsFile.parse("r.csv", csv, layup),
              new plyscape.layup.calibration.CalibrationRules(0.1, false, 0));
      for (plyscape.layup.calibration.Calibration.Boundary b : found.boundaries()) {
        double off = Math.abs(b.depthMm() - bottoms[b.plyNumber() - 1]);
        assertTrue(off <= c.stepMm() + 1e-9, "off by " + off);
        outside += off > b.toleranceMm() ? 1 : 0;
        all++;
      }
    }
    // Three deviations of an even spread hold all of it.
    assertEquals(0, outside, outside + " of " + all);
  }
}
