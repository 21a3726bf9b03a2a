package plyscape.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import plyscape.fault.Warnings;
import plyscape.text.Visible;

/**
 * How one job of several went.
 *
 * @param directory where its output is, "" when it failed
 * @param totalS cutting time, 0 when unknown
 * @param message why it failed, "" when it didn't
 */
record Line(
    String name, int exitCode, String directory, double totalS, int warnings, String message) {

  static Line done(String name, JobRun.Outcome outcome, Warnings warnings) {
    String directory = outcome.directory() == null ? "" : outcome.directory().toString();
    double total = outcome.plan().time() == null ? 0 : outcome.plan().time().totalS();
    return new Line(name, ExitCodes.DONE, directory, total, warnings.list().size(), "");
  }

  static Line failed(String name, Throwable thrown) {
    return new Line(name, ExitCodes.of(thrown), "", 0, 0, ExitCodes.message(thrown));
  }

  /** For people. */
  String text() {
    if (exitCode != ExitCodes.DONE) {
      return "failed  " + Visible.line(name) + ": " + Visible.lines(message);
    }
    String out = "done    " + Visible.line(name);
    out += directory.isEmpty() ? "" : " -> " + Visible.line(directory);
    out += totalS > 0 ? ", " + JobRun.duration(totalS) : "";
    return warnings == 0 ? out : out + ", " + warnings + (warnings == 1 ? " warning" : " warnings");
  }

  /** For scripts: one JSON object in one line. */
  String json() {
    ObjectNode node = new ObjectMapper().createObjectNode();
    node.put("job", name).put("exit", exitCode).put("directory", directory).put("total_s", totalS);
    return node.put("warnings", warnings).put("message", message).toString();
  }
}
