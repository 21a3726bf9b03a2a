package plyscape.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.stream.Collectors;
import plyscape.machine.Tool;
import plyscape.plan.CutterTrial;
import plyscape.report.json.JsonTree;
import plyscape.text.Numbers;
import plyscape.text.TextTable;

/** What a job takes with other cutters, a line a set of them. */
public final class TrialTable {

  private TrialTable() {}

  /** For the console: times in minutes, areas in mm2. */
  public static String text(List<CutterTrial> trials) {
    TextTable table =
        new TextTable()
            .left("cutters")
            .left("used")
            .right("cutting min")
            .right("changes")
            .right("in all min")
            .right("plies")
            .right("lost mm2");
    StringBuilder refused = new StringBuilder();
    for (CutterTrial trial : trials) {
      String names = names(trial);
      trial
          .outcome()
          .ifPresentOrElse(
              outcome ->
                  table.row(
                      names,
                      String.join(", ", outcome.used()),
                      minutes(outcome.cutS()),
                      Integer.toString(outcome.changes()),
                      minutes(outcome.totalS()),
                      Integer.toString(outcome.plies()),
                      Numbers.fixed(outcome.lostMm2(), 1)),
              () -> {
                table.row(names, "none", "-", "-", "-", "-", "-");
                refused.append(names).append(": ").append(trial.refusal()).append('\n');
              });
    }
    return table.text() + refused;
  }

  /** For scripts: a list of objects, times in s. */
  public static String json(List<CutterTrial> trials) {
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    for (CutterTrial trial : trials) {
      ObjectNode node = list.addObject();
      ArrayNode tools = node.putArray("tools");
      for (Tool tool : trial.tools()) {
        tools
            .addObject()
            .put("name", tool.name())
            .put("diameter_mm", tool.diameterMm())
            .put("feed", tool.feedMmPerMin())
            .put("stepdown_mm", tool.stepdownMm());
      }
      trial
          .outcome()
          .ifPresentOrElse(
              outcome -> outcome(node, outcome), () -> node.put("refusal", trial.refusal()));
    }
    return JsonTree.text(list, true) + "\n";
  }

  private static void outcome(ObjectNode node, CutterTrial.Outcome outcome) {
    ArrayNode used = node.putArray("used");
    outcome.used().forEach(used::add);
    node.put("cut_s", outcome.cutS())
        .put("changes", outcome.changes())
        .put("total_s", outcome.totalS())
        .put("plies", outcome.plies())
        .put("lost_mm2", outcome.lostMm2());
  }

  private static String names(CutterTrial trial) {
    return trial.tools().stream().map(Tool::name).collect(Collectors.joining(", "));
  }

  private static String minutes(double seconds) {
    return Numbers.fixed(seconds / 60, 1);
  }
}
