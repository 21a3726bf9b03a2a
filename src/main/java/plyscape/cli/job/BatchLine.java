package plyscape.cli.job;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.batch.FinishedOutput;
import plyscape.batch.JobResult;
import plyscape.cli.process.ExitCodes;
import plyscape.fault.Warnings;
import plyscape.plan.CutPlan;
import plyscape.text.Durations;
import plyscape.text.Visible;

/**
 * What is said of one job of several.
 *
 * @param directory where its output is, "" when it failed
 * @param unchanged whether an earlier output still held
 * @param shortOfMemory whether it failed for want of memory
 * @param wouldWrite files with sizes that a dry run would have written; empty otherwise
 */
record BatchLine(
    JobResult result,
    String directory,
    boolean unchanged,
    boolean shortOfMemory,
    SortedMap<String, Long> wouldWrite) {

  static BatchLine done(String name, JobRun.Outcome outcome, Warnings warnings, double seconds) {
    String directory = outcome.directory() == null ? "" : outcome.directory().toString();
    FinishedOutput earlier = outcome.earlier();
    double total = outcome.plan() instanceof CutPlan cut ? cut.time().totalS() : 0;
    JobResult result =
        new JobResult(
            name,
            ExitCodes.DONE,
            "",
            seconds,
            earlier != null ? earlier.totalS() : total,
            earlier != null ? earlier.warnings() : byCode(warnings));
    SortedMap<String, Long> dry =
        outcome.dry() ? new TreeMap<>(outcome.files()) : Collections.emptySortedMap();
    return new BatchLine(result, directory, earlier != null, false, dry);
  }

  static BatchLine failed(String name, Throwable thrown, double seconds) {
    SortedMap<String, Integer> none = Collections.emptySortedMap();
    JobResult result =
        new JobResult(name, ExitCodes.of(thrown), ExitCodes.message(thrown), seconds, 0, none);
    boolean memory = thrown instanceof OutOfMemoryError;
    return new BatchLine(result, "", false, memory, Collections.emptySortedMap());
  }

  /** The same with another result. */
  BatchLine with(JobResult other) {
    return new BatchLine(other, directory, unchanged, shortOfMemory, wouldWrite);
  }

  int exitCode() {
    return result.exit();
  }

  boolean failed() {
    return !result.done();
  }

  /** For people. */
  String text() {
    String name = Visible.line(result.job());
    if (failed()) {
      return "failed  " + name + ": " + Visible.lines(result.message());
    }
    String out = (wouldWrite.isEmpty() ? "done    " : "planned ") + name;
    out += directory.isEmpty() ? "" : " -> " + Visible.line(directory);
    out += result.totalS() > 0 ? ", " + Durations.text(result.totalS()) : "";
    out += unchanged ? ", unchanged" : "";
    out += result.warnings().isEmpty() ? "" : ", " + warningText();
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
    result.warnings().forEach((code, times) -> codes.add(times == 1 ? code : code + " " + times));
    return count + (count == 1 ? " warning (" : " warnings (") + String.join(", ", codes) + ")";
  }

  private int count() {
    return result.warnings().values().stream().mapToInt(Integer::intValue).sum();
  }

  private static SortedMap<String, Integer> byCode(Warnings warnings) {
    SortedMap<String, Integer> codes = new TreeMap<>();
    warnings.list().forEach(warning -> codes.merge(warning.code(), 1, Integer::sum));
    return codes;
  }

  /** For scripts: one JSON object in one line. */
  String json() {
    ObjectNode node = new ObjectMapper().createObjectNode();
    node.put("job", result.job()).put("exit", result.exit()).put("directory", directory);
    node.put("total_s", result.totalS()).put("unchanged", unchanged);
    node.put("warnings", count()).put("message", result.message());
    if (!result.warnings().isEmpty()) {
      ObjectNode codes = node.putObject("warning_codes");
      result.warnings().forEach(codes::put);
    }
    if (!wouldWrite.isEmpty()) {
      ObjectNode files = node.putObject("would_write");
      wouldWrite.forEach(files::put);
    }
    return node.toString();
  }
}
