package plyscape.report.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;
import plyscape.render.HandPlan;

class PlanJsonTest {

  /** Keys and order as section 8 of src/contract.md lists them. */
  @Test
  void keys_areTheContractsInItsOrder() throws Exception {
    JsonNode root = new ObjectMapper().readTree(PlanJson.text(HandPlan.make()));
    assertEquals(
        "schema version layup inputs options_sha256 panel terrain plies panel_risk zones tools"
            + " passes time verification standing warnings paths",
        keys(root));
    assertEquals(
        "width_mm height_mm thickness_mm carved flatness_mm top_map", keys(root.get("panel")));
    assertEquals(
        "file crs zmin_m zmax_m cell_m voids_filled ground_per_panel_mm",
        keys(root.get("terrain")));
    assertEquals(
        "number name colour top_mm bottom_mm mid_mm target_mm needed_mm available_mm reliable risk"
            + " area_mm2 share breaks_m target_range_mm needed_worst_mm worst_at unsanded_share",
        keys(root.get("plies").get(0)));
    assertEquals("name ply features area_mm2 skipped", keys(root.get("zones").get(0)));
    assertEquals("feature why", keys(root.get("zones").get(0).get("skipped").get(0)));
    assertEquals(
        "name diameter_mm used shape rpm feed thin_feed plunge stepdown_mm",
        keys(root.get("tools").get(0)));
    assertEquals(
        "file tool depth_mm ply stepdown_from_mm cut_mm rapid_mm plunges time_s",
        keys(root.get("passes").get(0)));
    assertEquals("cut_s rapid_s total_s lower_bound_s spin_up_s", keys(root.get("time")));
    assertEquals(
        "cell_mm matched_share gouged_mm2 gouge_max_mm uncut_mm2 unreachable_mm2 collisions"
            + " bite_max_mm bite_max_share",
        keys(root.get("verification")));
    assertEquals("code message where", keys(root.get("warnings").get(0)));
  }

  @Test
  void figures_areThePlans() throws Exception {
    JsonNode root = new ObjectMapper().readTree(PlanJson.text(HandPlan.make()));
    assertEquals("plyscape-plan-1", root.get("schema").asText());
    assertEquals("[5.0,5.0,95.0,75.0]", root.get("panel").get("carved").toString());
    assertEquals(10, root.get("terrain").get("ground_per_panel_mm").doubleValue());
    JsonNode barley = root.get("plies").get(1);
    assertEquals(1.5, barley.get("mid_mm").doubleValue(), 1e-12);
    assertEquals(1.4, barley.get("target_mm").doubleValue(), 1e-12);
    assertEquals(1200, barley.get("area_mm2").doubleValue());
    assertEquals(1200.0 / 6300, barley.get("share").doubleValue());
    assertEquals("[120.0,160.0]", barley.get("breaks_m").toString());
    assertEquals("[160.0,200.0]", root.get("plies").get(0).get("breaks_m").toString());
    assertEquals("[100.0,120.0]", root.get("plies").get(2).get("breaks_m").toString());
    assertTrue(root.get("plies").get(3).get("breaks_m").isNull());
    assertEquals("deep blue", root.get("zones").get(0).get("ply").asText());
    assertTrue(root.get("tools").get(0).get("used").asBoolean());
    assertFalse(root.get("tools").get(1).get("used").asBoolean());
    assertEquals(3, root.get("passes").size());
    double shares = 0;
    for (JsonNode ply : root.get("plies")) {
      shares += ply.get("share").doubleValue();
    }
    assertEquals(1, shares, 1e-12);
  }

  @Test
  void preview_hasNullsInsteadOfInventedNumbers() throws Exception {
    JsonNode root = new ObjectMapper().readTree(PlanJson.text(HandPlan.make().landscape()));
    assertTrue(root.get("time").isNull() && root.get("verification").isNull());
    assertEquals(0, root.get("passes").size());
  }

  @Test
  void text_hasLfOnlyAndIsTheSameTwice() {
    String text = PlanJson.text(HandPlan.make("a\"b\\c\n<"));
    assertFalse(text.contains("\r"));
    assertTrue(text.endsWith("}\n"));
    assertTrue(text.contains("\"name\" : \"a\\\"b\\\\c\\n<\""), text);
    assertEquals(text, PlanJson.text(HandPlan.make("a\"b\\c\n<")));
  }

  @Test
  void readBack_givesTheSameFigures() {
    PlanFigures figures = PlanJsonReader.read("plan.json", PlanJson.text(HandPlan.make()));
    assertEquals(100, figures.widthMm());
    assertEquals(75, figures.carved().maxY());
    assertEquals(5, figures.plies().size());
    assertEquals(3.4, figures.plies().get(3).targetMm(), 1e-12);
    assertEquals(List.of("01-end-mill-3.nc"), figures.files());
    assertEquals(3, figures.tools().get(0).diameterMm());
  }

  @Test
  void brokenFiles_areFaultsThatNameTheKey() {
    String good = PlanJson.text(HandPlan.make());
    assertMessage(good.substring(0, 200), "plan.json:");
    assertMessage("[]", "schema");
    assertMessage(good.replace("plyscape-plan-1", "plyscape-plan-9"), "schema");
    assertMessage(
        good.replace("\"target_mm\" : 1.4", "\"target_mm\" : \"x\""), "plies[1].target_mm");
    assertMessage(good.replace("\"carved\"", "\"carve\""), "panel.carved");
    assertMessage(good.replace("\"tools\" : [", "\"tools\" : 3, \"else\" : ["), "tools");
  }

  private static void assertMessage(String text, String part) {
    InputFault fault = assertThrows(InputFault.class, () -> PlanJsonReader.read("plan.json", text));
    assertTrue(
        fault.getMessage().startsWith("plan.json") && fault.getMessage().contains(part),
        fault.getMessage());
  }

  private static String keys(JsonNode node) {
    List<String> names = new ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return String.join(" ", names);
  }
}
