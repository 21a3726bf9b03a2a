package plyscape.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.fault.Warnings;
import plyscape.plan.CutPlan;
import plyscape.text.Durations;
import plyscape.text.Visible;

/**
 * How one job of several went.
 *
 * @param directory where its output is, "" when it failed
 * @param totalS cutting time, 0 when unknown
 * @param warnings how many of each code
 * @param message why it failed, "" when it didn't
 * @param wouldWrite files with sizes that a dry run would have written; empty otherwise
 */
record BatchLine(
    String name,
    int exitCode,
    String directory,
    double totalS,
    SortedMap<String, Integer> warnings,
    String message,
    SortedMap<String, Long> wouldWrite) {

  static BatchLine done(String name, JobRun.Outcome outcome, Warnings warnings) {
    String directory = outcome.directory() == null ? "" : outcome.directory().toString();
    double total = outcome.plan() instanceof CutPlan cut ? cut.time().totalS() : 0;
    SortedMap<String, Long> dry =
        outcome.dry() ? new TreeMap<>(outcome.files()) : Collections.emptySortedMap();
    return new BatchLine(name, ExitCodes.DONE, directory, total, byCode(warnings), "", dry);
  }

  static BatchLine failed(String name, Throwable thrown) {
    return new BatchLine(
        name,
        ExitCodes.of(thrown),
        "",
        0,
        Collections.emptySortedMap(),
        ExitCodes.message(thrown),
        Collections.emptySortedMap());
  }

  /** For people. */
  String text() {
    if (exitCode != ExitCodes.DONE) {
      return "failed  " + Visible.line(name) + ": " + Visible.lines(message);
    }
    String out = (wouldWrite.isEmpty() ? "done    " : "planned ") + Visible.line(name);
    out += directory.isEmpty() ? "" : " -> " + Visible.line(directory);
    out += totalS > 0 ? ", " + Durations.text(totalS) : "";
    out += warnings.isEmpty() ? "" : ", " + warningText();
    if (!wouldWrite.isEmpty()) {
      out += ", would write " + wouldWrite.size() + " files:";
      for (var file : wouldWrite.entrySet()) {
        out += "\n          " + file.getKey() + "  " + JobRun.size(file.getValue());
      }
    }
    return out;
  }

  /** Such as {@code 4 warnings (merged 3, thin-ply)}. */
  private String warningText() {
    int count = count();
    List<String> codes = new ArrayList<>();
    warnings.forEach((code, times) -> codes.add(times == 1 ? code : code + " " + times));
    return count + (count == 1 ? " warning (" : " warnings (") + String.join(", ", codes) + ")";
  }

  private int count() {
    return warnings.values().stream().mapToInt(Integer::intValue).sum();
  }

  private static SortedMap<String, Integer> byCode(Warnings warnings) {
    SortedMap<String, Integer> codes = new TreeMap<>();
    warnings.list().forEach(warning -> codes.merge(warning.code(), 1, Integer::sum));
    return codes;
  }

  /** For scripts: one JSON object in one line. */
  String json() {
    ObjectNode node = new ObjectMapper().createObjectNode();
    node.put("job", name).put("exit", exitCode).put("directory", directory).put("total_s", totalS);
    node.put("warnings", count()).put("message", message);
    if (!warnings.isEmpty()) {
      ObjectNode codes = node.putObject("warning_codes");
      warnings.forEach(codes::put);
    }
    if (!wouldWrite.isEmpty()) {
      ObjectNode files = node.putObject("would_write");
      wouldWrite.forEach(files::put);
    }
    return node.toString();
  }
}
