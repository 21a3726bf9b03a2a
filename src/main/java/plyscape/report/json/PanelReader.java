package plyscape.report.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.Warning;
import plyscape.plan.Landscape;
import plyscape.plan.PanelFigures;
import plyscape.plan.PlanTime;

/** Reads what a panel came to back from its {@code plan.json}. */
public final class PanelReader {

  private PanelReader() {}

  /**
   * The figures, without estimates of other cutters.
   *
   * @param plan of this version and this job
   * @param regions of the panel
   */
  public static PanelFigures figures(JsonNode plan, Landscape regions) {
    JsonNode time = plan.path("time");
    return new PanelFigures(
        regions.deepestCutMm() > 0,
        cutters(plan),
        new PlanTime(
            time.path("cut_s").doubleValue(),
            time.path("rapid_s").doubleValue(),
            time.path("total_s").doubleValue(),
            time.path("lower_bound_s").doubleValue()),
        plan.path("verification").path("unreachable_mm2").doubleValue(),
        List.of(),
        cutWarnings(plan, regions));
  }

  private static List<String> cutters(JsonNode plan) {
    Map<String, String> byFile = new HashMap<>();
    for (JsonNode pass : plan.path("passes")) {
      byFile.put(pass.path("file").asText(), pass.path("tool").asText());
    }
    List<String> cutters = new ArrayList<>();
    for (JsonNode program : plan.path("paths")) {
      String file = program.path("file").asText();
      cutters.add(byFile.getOrDefault(file, file));
    }
    return cutters;
  }

  /** Those of the regions come first, and are known. */
  private static List<Warning> cutWarnings(JsonNode plan, Landscape regions) {
    List<Warning> all = new ArrayList<>();
    for (JsonNode warning : plan.path("warnings")) {
      all.add(
          new Warning(
              warning.path("code").asText(),
              warning.path("message").asText(),
              warning.path("where").asText()));
    }
    return all.subList(Math.min(regions.warnings().size(), all.size()), all.size());
  }
}
