package plyscape.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import plyscape.grid.Box;
import plyscape.grid.Turn;
import plyscape.layup.FaceWindow;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.render.CellMap;
import plyscape.render.RiskStep;
import plyscape.report.json.Breaks;
import plyscape.report.json.JsonTree;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/** The block of data that the page's scripts read. Not a contract: it may change with the page. */
final class PageData {

  /** Cells on the panel's longer side: a quarter millimetre on a panel of 240 mm. */
  private static final int LONGEST_CELLS = 960;

  private PageData() {}

  /** JSON that may stand in a script element: no {@code <} and no line separators in it. */
  static String json(Landscape plan) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    panel(root.putObject("panel"), plan);
    root.put("glue", plan.job().layup().glueLine().thicknessMm());
    root.putObject("border").put("finished", plan.job().allowance().sandingMm());
    plies(root.putArray("plies"), plan);
    plan.faces().ifPresent(faces -> FaceMap.put(root.putObject("faces"), plan, faces));
    ArrayNode risks = root.putArray("risks");
    for (RiskStep step : RiskStep.values()) {
      risks.addObject().put("most", step.most()).put("colour", step.colour());
    }
    ArrayNode zones = root.putArray("zones");
    for (Zone zone : plan.zones()) {
      zones.add(zone.spec().name());
    }
    ground(root.putObject("ground"), plan.terrain());
    cells(root.putObject("cells"), plan);
    Elevations.put(root.putObject("elevations"), plan);
    outlines(root.putObject("outlines"), plan);
    return JsonTree.text(root, false)
        .replace("<", "\\u003c")
        .replace("\u2028", "\\u2028")
        .replace("\u2029", "\\u2029");
  }

  private static void panel(ObjectNode panel, Landscape plan) {
    panel
        .put("width", plan.job().panel().widthMm())
        .put("height", plan.job().panel().heightMm())
        .put("thickness", plan.thicknessMm());
    box(panel.putArray("carved"), plan.tiling().carved());
  }

  private static void ground(ObjectNode ground, Terrain terrain) {
    ground.put("crs", terrain.crs());
    box(ground.putArray("box"), terrain.frame().ground());
    Turn turn = terrain.frame().turn();
    if (!turn.none()) {
      ground.putArray("turn").add(turn.degrees()).add(turn.x()).add(turn.y());
    }
  }

  private static void cells(ObjectNode cells, Landscape plan) {
    CellMap map = CellMap.of(plan, LONGEST_CELLS);
    cells
        .put("columns", map.columns())
        .put("rows", map.rows())
        .put("mm", map.cellMm())
        .put("plies", map.plyRuns())
        .put("zones", map.zoneRuns())
        .put("drawn", CellMap.runs(DrawnPlies.of(plan, map)));
  }

  private static void plies(ArrayNode plies, Landscape plan) {
    for (PlyDepth depth : plan.depths()) {
      plies
          .addObject()
          .put("number", depth.ply().number())
          .put("name", depth.ply().name())
          .put("colour", depth.ply().colour())
          .put("top", depth.topMm())
          .put("bottom", depth.bottomMm())
          .put("target", depth.targetMm())
          .put("finished", depth.targetMm() + plan.job().allowance().sandingMm())
          .put("available", depth.availableMm())
          .put("needed", depth.neededMm())
          .put("risk", depth.risk())
          .put("chance", Words.chance(depth.risk()));
      double[] band = Breaks.ofPly(plan, depth.ply().number());
      if (band != null) {
        ((ObjectNode) plies.get(plies.size() - 1)).putArray("band").add(band[0]).add(band[1]);
      }
      FaceWindow cut = plan.cutMm(depth.ply().number());
      if (cut.open()) {
        double sanding = plan.job().allowance().sandingMm();
        ((ObjectNode) plies.get(plies.size() - 1))
            .putArray("range")
            .add(cut.upperMm() + sanding)
            .add(cut.lowerMm() + sanding);
      }
    }
  }

  private static void outlines(ObjectNode node, Landscape plan) {
    ArrayNode plies = node.put("mm", Outlines.GRID_MM).putArray("plies");
    plan.tiling().exposed().keySet().forEach(plies::add);
    ArrayNode rings = node.putArray("rings");
    Outlines.pack(plan.tiling().exposed(), Outlines.MOST_CORNERS).forEach(rings::add);
  }

  private static void box(ArrayNode list, Box box) {
    list.add(box.minX()).add(box.minY()).add(box.maxX()).add(box.maxY());
  }
}
