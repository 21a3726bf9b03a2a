package plyscape.report.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.plan.Landscape;
import plyscape.plan.PanelSummary;
import plyscape.plan.Plan;
import plyscape.plan.Tile;
import plyscape.plan.TiledLandscape;
import plyscape.plan.TiledPlan;
import plyscape.plan.Version;

/**
 * {@code tiles.json}: which panels carry a landscape together, where each lies in the whole (mm,
 * from the lower left corner of the lower left panel), and their times. Everything else is in each
 * panel's {@code plan.json}.
 */
public final class TilesJson {

  /** Value of the key {@code schema}. */
  public static final String SCHEMA = "plyscape-tiles-1";

  private TilesJson() {}

  /** The file's text, LF at the end. */
  public static String text(TiledPlan plan) {
    ObjectNode root = head(plan);
    root.put("total_s", plan.time().totalS());
    ArrayNode tiles = root.putArray("tiles");
    plan.tiles().forEach(tile -> cut(tiles, plan.panels(), tile));
    return JsonTree.text(root, true) + "\n";
  }

  /** The same with each panel's {@code plan.json} under {@code plan}. */
  public static String withPlans(TiledPlan plan) {
    ObjectNode root = head(plan);
    root.put("total_s", plan.time().totalS());
    ArrayNode tiles = root.putArray("tiles");
    plan.tiles()
        .forEach(tile -> cut(tiles, plan.panels(), tile).set("plan", tree(tile.plan().json())));
    return JsonTree.text(root, true) + "\n";
  }

  /** The same of a landscape without toolpaths. */
  public static String withPlans(TiledLandscape landscape) {
    ObjectNode root = head(landscape);
    root.putNull("total_s");
    ArrayNode tiles = root.putArray("tiles");
    for (Tile<Landscape> tile : landscape.tiles()) {
      ObjectNode node = place(tiles, landscape.panels(), tile);
      node.putNull("total_s");
      node.set("plan", PlanJson.tree(tile.plan()));
    }
    return JsonTree.text(root, true) + "\n";
  }

  private static JsonNode tree(String json) {
    try {
      return new ObjectMapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a plan.json of our own isn't JSON", e);
    }
  }

  private static ObjectNode head(Plan whole) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("schema", SCHEMA)
        .put("version", Version.TEXT)
        .put("layup", whole.job().layup().name());
    Box carved = whole.tiling().carved();
    ObjectNode panels = root.putObject("whole");
    panels
        .put("width_mm", whole.job().panel().widthMm())
        .put("height_mm", whole.job().panel().heightMm());
    panels
        .putArray("carved")
        .add(carved.minX())
        .add(carved.minY())
        .add(carved.maxX())
        .add(carved.maxY());
    return root;
  }

  private static ObjectNode cut(ArrayNode tiles, Job.PanelSpec panels, Tile<PanelSummary> tile) {
    return place(tiles, panels, tile).put("total_s", tile.plan().figures().time().totalS());
  }

  private static ObjectNode place(ArrayNode tiles, Job.PanelSpec panels, Tile<?> tile) {
    return tiles
        .addObject()
        .put("directory", tile.name())
        .put("column", tile.column())
        .put("row", tile.row())
        .put("left_mm", (tile.column() - 1) * panels.widthMm())
        .put("bottom_mm", (tile.row() - 1) * panels.heightMm());
  }
}
