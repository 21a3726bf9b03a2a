package plyscape.cli.shop;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import plyscape.cli.talk.JsonText;
import plyscape.layup.advice.BalanceCheck;
import plyscape.shop.PressingOrder;
import plyscape.shop.PressingSheet;

/** A pressing sheet as JSON. */
final class GlueupJson {

  private GlueupJson() {}

  /** The text, units as the keys say. */
  static String text(PressingSheet s) {
    PressingOrder o = s.order();
    ObjectNode root = JsonText.object("plyscape-glueup-1");
    root.put("layup", s.layup().name());
    root.put("width_mm", o.widthMm()).put("height_mm", o.heightMm()).put("trim_mm", o.trimMm());
    root.put("thickness_mm", s.thicknessMm());
    veneers(root.putArray("veneers"), s);
    root.put("balanced", s.findings().isEmpty());
    ArrayNode findings = root.putArray("findings");
    for (BalanceCheck.Finding f : s.findings()) {
      findings.addObject().put("code", f.code()).put("what", f.what()).put("mend", f.mend());
    }
    glue(root.putObject("glue"), s);
    clamping(root.putObject("clamping"), s);
    root.putObject("times").put("open_min", o.openMin()).put("press_min", o.pressMin());
    movement(root.putObject("movement"), s);
    ArrayNode cautions = root.putArray("cautions");
    s.cautions().forEach(cautions::add);
    return JsonText.of(root);
  }

  private static void veneers(ArrayNode veneers, PressingSheet s) {
    for (PressingSheet.Veneer v : s.veneers()) {
      ObjectNode node = veneers.addObject();
      node.put("ply", v.ply().number()).put("name", v.ply().name()).put("wood", v.ply().wood());
      node.put("thickness_mm", v.ply().thicknessMm()).put("grain_deg", v.turned());
      node.put("along_grain_mm", v.alongMm()).put("across_grain_mm", v.acrossMm());
    }
  }

  private static void glue(ObjectNode node, PressingSheet s) {
    PressingSheet.GlueNeed g = s.glue();
    node.put("family", s.order().glue().name().toLowerCase(Locale.ROOT))
        .put("spread_g_per_m2", g.spreadGPerM2())
        .put("lines", g.lines())
        .put("area_m2", g.areaM2())
        .put("line_g", g.lineG())
        .put("total_g", g.totalG())
        .put("with_waste_g", g.withWasteG());
  }

  private static void clamping(ObjectNode node, PressingSheet s) {
    PressingSheet.Clamping c = s.clamping();
    node.put("press", s.order().press().name().toLowerCase(Locale.ROOT))
        .put("pressure_mpa", c.pressureMpa())
        .put("wanted_mpa", c.wantedMpa())
        .put("force_kn", c.forceKn())
        .put("force_kgf", c.forceKgf())
        .put("force_each_kn", s.order().forceEachKn())
        .put("count", c.count())
        .put("densest_wood", c.densest());
  }

  private static void movement(ObjectNode node, PressingSheet s) {
    node.put("per_percent_mm", s.movement().perPercentMm())
        .put("from_percent", s.order().moistureFrom())
        .put("to_percent", s.order().moistureTo())
        .put("change_mm", s.movement().changeMm());
    ArrayNode unknown = node.putArray("unknown_woods");
    s.movement().unknown().forEach(unknown::add);
  }
}
