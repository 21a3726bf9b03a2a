package plyscape.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import plyscape.grid.Box;
import plyscape.plan.Plan;
import plyscape.plan.PlanTime;

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
  public static String text(Plan whole) {
    return JsonTree.text(tree(whole, false), true) + "\n";
  }

  /** The same with each panel's {@code plan.json} under {@code plan}. */
  public static String withPlans(Plan whole) {
    return JsonTree.text(tree(whole, true), true) + "\n";
  }

  private static ObjectNode tree(Plan whole, boolean plans) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("schema", SCHEMA)
        .put("version", whole.version())
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
    time(root, whole.time());
    ArrayNode tiles = root.putArray("tiles");
    for (Plan.Tile tile : whole.tiles()) {
      double width = tile.plan().job().panel().widthMm();
      double height = tile.plan().job().panel().heightMm();
      ObjectNode node = tiles.addObject();
      node.put("directory", tile.name()).put("column", tile.column()).put("row", tile.row());
      node.put("left_mm", (tile.column() - 1) * width).put("bottom_mm", (tile.row() - 1) * height);
      time(node, tile.plan().time());
      if (plans) {
        node.set("plan", PlanJson.tree(tile.plan()));
      }
    }
    return root;
  }

  private static void time(ObjectNode node, PlanTime time) {
    if (time == null) {
      node.putNull("total_s");
    } else {
      node.put("total_s", time.totalS());
    }
  }
}
