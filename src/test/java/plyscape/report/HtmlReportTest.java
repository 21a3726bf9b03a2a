package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import plyscape.plan.PanelPlan;
import plyscape.render.HandPlan;
import plyscape.report.json.PlanJson;
import plyscape.text.Durations;
import plyscape.text.Numbers;

/** What the page says without a browser. */
class HtmlReportTest {

  /** The page of a plan. */
  static String page(PanelPlan plan) {
    return HtmlReport.text(plan, HtmlReport.picture(plan.landscape()));
  }

  private static final String PAGE = page(HandPlan.make());

  private static final String EVIL = "</script><script>alert(1)</script>\"'&<!--";

  @Test
  void tableOfPlies_hasTheFiguresOfPlanJson() throws Exception {
    JsonNode plan = new ObjectMapper().readTree(PlanJson.text(HandPlan.make()));
    List<List<String>> rows = rows(PAGE, "plies");
    assertEquals(plan.get("plies").size(), rows.size());
    for (int i = 0; i < rows.size(); i++) {
      JsonNode ply = plan.get("plies").get(i);
      List<String> row = rows.get(i);
      assertEquals(ply.get("number").asInt() + ply.get("name").asText(), row.get(0));
      assertEquals(fixed(ply, "top_mm", 3), row.get(3));
      assertEquals(fixed(ply, "bottom_mm", 3), row.get(4));
      assertEquals(fixed(ply, "available_mm", 3), row.get(6));
      assertEquals(fixed(ply, "needed_mm", 3), row.get(7));
      if (ply.get("area_mm2").doubleValue() > 0) {
        assertEquals(
            ply.get("target_mm").doubleValue() > 0 ? fixed(ply, "target_mm", 3) : "uncut",
            row.get(5));
        assertEquals(ply.get("reliable").asBoolean(), row.get(1).equals("reliable"));
        assertEquals(fixed(ply, "area_mm2", 1), row.get(9));
        assertEquals(Numbers.fixed(100 * ply.get("share").doubleValue(), 1) + " %", row.get(10));
      } else {
        assertEquals("-", row.get(5));
      }
    }
  }

  @Test
  void passesAndZones_haveTheFiguresOfPlanJson() throws Exception {
    JsonNode plan = new ObjectMapper().readTree(PlanJson.text(HandPlan.make()));
    List<List<String>> passes = rows(PAGE, "passes");
    // A row adds up the runs at one depth; plan.json lists them.
    Map<String, List<JsonNode>> runs = new LinkedHashMap<>();
    for (JsonNode pass : plan.get("passes")) {
      String key = pass.get("file") + " " + pass.get("stepdown_from_mm") + pass.get("depth_mm");
      runs.computeIfAbsent(key, k -> new ArrayList<>()).add(pass);
    }
    assertTrue(runs.size() < plan.get("passes").size(), "some depth has two runs");
    assertEquals(runs.size(), passes.size());
    Iterator<List<String>> rows = passes.iterator();
    for (List<JsonNode> group : runs.values()) {
      List<String> row = rows.next();
      assertEquals(group.get(0).get("file").asText(), row.get(0));
      assertEquals(fixed(group.get(0), "depth_mm", 3), row.get(4));
      assertEquals(Numbers.fixed(sum(group, "cut_mm"), 0), row.get(5));
      assertEquals(Integer.toString(group.size()), row.get(7));
      assertEquals(Numbers.fixed(sum(group, "plunges"), 0), row.get(8));
      assertEquals(Durations.text(sum(group, "time_s")), row.get(9));
    }
    List<List<String>> paths = rows(PAGE, "paths");
    assertEquals(plan.get("paths").size(), paths.size());
    assertEquals(fixed(plan.get("paths").get(0), "travel_bound_mm", 0), paths.get(0).get(2));
    List<List<String>> zones = rows(PAGE, "zones");
    assertEquals(fixed(plan.get("zones").get(0), "area_mm2", 1), zones.get(0).get(3));
    assertTrue(
        zones.get(0).get(4).contains("spring &lt;1&gt;: a point has no width"),
        zones.get(0).get(4));
    assertTrue(zones.get(1).contains("too small"), "what was merged follows");
  }

  private static double sum(List<JsonNode> passes, String field) {
    return passes.stream().mapToDouble(pass -> pass.get(field).doubleValue()).sum();
  }

  @Test
  void summaryAndProof_haveTheFiguresOfPlanJson() throws Exception {
    JsonNode plan = new ObjectMapper().readTree(PlanJson.text(HandPlan.make()));
    String text = PAGE.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    JsonNode proof = plan.get("verification");
    JsonNode time = plan.get("time");
    for (String part :
        List.of(
            "Machine time " + Durations.text(time.get("total_s").doubleValue()),
            "the limit is " + Durations.text(time.get("lower_bound_s").doubleValue()),
            Numbers.fixed(100 * proof.get("matched_share").doubleValue(), 2) + " % as planned",
            Durations.text(time.get("cut_s").doubleValue())
                + " cutting, "
                + Durations.text(time.get("rapid_s").doubleValue())
                + " moving",
            // One cutter put in (a minute by default) and one start of the spindle (5 s).
            "allow " + Durations.text(time.get("total_s").doubleValue() + 60 + 5),
            "Cut too deep "
                + fixed(proof, "gouged_mm2", 3)
                + " mm2, at most "
                + fixed(proof, "gouge_max_mm", 3)
                + " mm",
            "Left too high " + fixed(proof, "uncut_mm2", 2) + " mm2",
            "Out of reach " + fixed(proof, "unreachable_mm2", 2) + " mm2",
            "Collisions " + proof.get("collisions").asInt(),
            fixed(plan.get("panel"), "thickness_mm", 2) + " mm thick, 4 of 5 plies show")) {
      assertTrue(text.contains(part), "not on the page: " + part);
    }
  }

  @Test
  void page_warnsFirst_andLoadsNothing() {
    String page = PAGE;
    assertTrue(page.indexOf("thin-ply") < page.indexOf("id=\"summary\""));
    Matcher links = Pattern.compile("(?:src|href)=\"([^\"]*)\"").matcher(page);
    while (links.find()) {
      assertTrue(
          links.group(1).startsWith("#") || links.group(1).startsWith("data:image/png;base64,"),
          links.group(1));
    }
    assertFalse(
        page.contains("http://")
            || page.contains("https://")
            || page.contains("url(")
            || page.contains("@import"));
    assertEquals(page, page(HandPlan.make()), "same plan, same page");
  }

  @Test
  void namesFromInputs_areText() throws Exception {
    String page = page(HandPlan.make(EVIL));
    assertFalse(page.contains("alert(1)</script>"), "no script of the input's");
    assertEquals(
        1 + HtmlReport.SCRIPTS.size(),
        page.split("<script", -1).length - 1,
        "the data block and our scripts");
    Matcher data = Pattern.compile("id=\"plan-data\">(.*?)</script>", Pattern.DOTALL).matcher(page);
    assertTrue(data.find());
    JsonNode block = new ObjectMapper().readTree(data.group(1));
    assertEquals(EVIL, block.get("plies").get(0).get("name").asText());
  }

  @Test
  void words() {
    assertEquals("42 s", Durations.text(41.6));
    assertEquals("12 min 5 s", Durations.text(725));
    assertEquals("1 h", Durations.text(3600));
    assertEquals("3 h 20 min", Durations.text(12000));
    assertEquals("none", Words.chance(0));
    assertEquals("1 in 20", Words.chance(0.05));
    assertEquals("1 in 1 000 000", Words.chance(1e-6));
    assertEquals("below 1 in 1 000 000", Words.chance(1e-12));
  }

  /**
   * White and a mid grey after ISO/CIE 11664-4: L* 100 and 53.585 for sRGB 128 (by the formula; a,
   * b are 0).
   */
  @Test
  void colourDistance_byTheStandardsFormula() {
    assertEquals(100, Lab.lab(0xffffff)[0], 1e-3);
    assertEquals(53.585, Lab.lab(0x808080)[0], 1e-3);
    assertEquals(46.415, Lab.distance(0xffffff, 0x808080), 5e-2);
    assertEquals(0, Lab.distance(0x123456, 0x123456), 0);
  }

  private static String fixed(JsonNode node, String key, int places) {
    return Numbers.fixed(node.get(key).doubleValue(), places);
  }

  /** Cells of all tables of a section, tags taken out. */
  private static List<List<String>> rows(String page, String section) {
    int from = page.indexOf("<section id=\"" + section + "\">");
    String part = page.substring(from, page.indexOf("</section>", from));
    List<List<String>> rows = new ArrayList<>();
    Matcher body =
        Pattern.compile("<tr(?: class=\"off\")?>(<td.*?)</tr>", Pattern.DOTALL).matcher(part);
    while (body.find()) {
      List<String> cells = new ArrayList<>();
      Matcher cell = Pattern.compile("<td[^>]*>(.*?)</td>", Pattern.DOTALL).matcher(body.group(1));
      while (cell.find()) {
        cells.add(cell.group(1).replaceAll("<[^>]*>", ""));
      }
      rows.add(cells);
    }
    return rows;
  }
}
