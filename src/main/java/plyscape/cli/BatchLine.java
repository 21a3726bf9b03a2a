package plyscape.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
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
 * @param message why it failed, "" when it didn't
 * @param wouldWrite files with sizes that a dry run would have written; empty otherwise
 */
record BatchLine(
    String name,
    int exitCode,
    String directory,
    double totalS,
    int warnings,
    String message,
    SortedMap<String, Long> wouldWrite) {

  static BatchLine done(String name, JobRun.Outcome outcome, Warnings warnings) {
    String directory = outcome.directory() == null ? "" : outcome.directory().toString();
    double total = outcome.plan() instanceof CutPlan cut ? cut.time().totalS() : 0;
    SortedMap<String, Long> dry =
        outcome.dry() ? new TreeMap<>(outcome.files()) : Collections.emptySortedMap();
    return new BatchLine(name, ExitCodes.DONE, directory, total, warnings.list().size(), "", dry);
  }

  static BatchLine failed(String name, Throwable thrown) {
    return new BatchLine(
        name,
        ExitCodes.of(thrown),
        "",
        0,
        0,
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
    out += warnings == 0 ? "" : ", " + warnings + (warnings == 1 ? " warning" : " warnings");
    if (!wouldWrite.isEmpty()) {
      out += ", would write " + wouldWrite.size() + " files:";
      for (var file : wouldWrite.entrySet()) {
        out += "\n          " + file.getKey() + "  " + JobRun.size(file.getValue());
      }
    }
    return out;
  }

  /** For scripts: one JSON object in one line. */
  String json() {
    ObjectNode node = new ObjectMapper().createObjectNode();
    node.put("job", name).put("exit", exitCode).put("directory", directory).put("total_s", totalS);
    node.put("warnings", warnings).put("message", message);
    if (!wouldWrite.isEmpty()) {
      ObjectNode files = node.putObject("would_write");
      wouldWrite.forEach(files::put);
    }
    return node.toString();
  }
}
