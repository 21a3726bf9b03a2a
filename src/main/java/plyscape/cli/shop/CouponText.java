package plyscape.cli.shop;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import plyscape.cli.talk.JsonText;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.machine.Tool;
import plyscape.shop.Coupon;
import plyscape.shop.CouponGauge;
import plyscape.shop.CouponProgram;
import plyscape.simulate.Verification;
import plyscape.text.Durations;
import plyscape.text.Template;
import plyscape.text.Visible;

/** A coupon described: for a person, and as {@code coupon.json}. */
final class CouponText {

  private CouponText() {}

  /** What a person wants to know of it, some lines. */
  static String summary(Coupon coupon, Tool tool, CouponProgram program) {
    return Template.fill(
        "%s pads, steps of %.3t mm down to %.3t mm on %.3t x %.3t mm, with %s, about %s.\n"
            + "A boundary is read to +-%.3t mm. Print gauge.svg at 100 %%, fill in readings.csv,"
            + " then: plyscape calibrate.\n",
        coupon.pads().size(),
        coupon.stepMm(),
        coupon.deepestMm(),
        coupon.widthMm(),
        coupon.heightMm(),
        Visible.line(tool.name()),
        Durations.text(program.timeS()),
        coupon.readingErrorMm());
  }

  /** The text of {@code coupon.json}. */
  static String json(
      Layup layup, Depths depths, Coupon coupon, Tool tool, CouponProgram program, Verification v) {
    ObjectNode root = JsonText.object("plyscape-coupon-1");
    root.put("layup", layup.name());
    root.put("width_mm", coupon.widthMm()).put("height_mm", coupon.heightMm());
    root.put("step_mm", coupon.stepMm()).put("reading_error_mm", coupon.readingErrorMm());
    root.put("tool", tool.name())
        .put("diameter_mm", tool.diameterMm())
        .put("time_s", program.timeS());
    ArrayNode pads = root.putArray("pads");
    for (Coupon.Pad pad : coupon.pads()) {
      ObjectNode node = pads.addObject();
      node.put("number", pad.number()).put("depth_mm", pad.depthMm());
      node.put("expected_ply", CouponGauge.expected(pad.depthMm(), depths).ply().name());
      ArrayNode box = node.putArray("box");
      box.add(pad.box().minX()).add(pad.box().minY()).add(pad.box().maxX()).add(pad.box().maxY());
    }
    ArrayNode unseen = root.putArray("unseen_plies");
    coupon.unseen().forEach(unseen::add);
    root.putObject("verification")
        .put("cell_mm", v.cellMm())
        .put("matched_share", v.matchedShare())
        .put("gouged_mm2", v.gougedMm2())
        .put("uncut_mm2", v.uncutMm2())
        .put("unreachable_mm2", v.unreachableMm2());
    return JsonText.of(root);
  }
}
