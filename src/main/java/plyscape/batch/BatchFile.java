package plyscape.batch;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.fault.IoReason;
import plyscape.fault.JobFault;

/**
 * {@code batch.json}: how the jobs of a series went, sorted by their names. Only its seconds are
 * taken from a clock. Immutable.
 *
 * @param share whose jobs these are
 * @param jobs names of all jobs of the list, in its order
 * @param results of those of the share
 */
public record BatchFile(Share share, List<String> jobs, List<JobResult> results) {

  /** Value of the key {@code schema}. */
  public static final String SCHEMA = "plyscape-batch-1";

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Sorts. */
  public BatchFile {
    jobs = List.copyOf(jobs);
    results = results.stream().sorted(Comparator.comparing(JobResult::job)).toList();
  }

  /** The file's name: each share has its own, so that several may write into one folder. */
  public static String name(Share share) {
    return share.equals(Share.ALL)
        ? "batch.json"
        : "batch-" + share.number() + "-of-" + share.count() + ".json";
  }

  /**
   * Refuses to write over a file that isn't such a one.
   *
   * @throws JobFault if it is there and something else
   */
  public static void refuseOther(Path file) {
    if (Files.exists(file) && read(file) == null) {
      throw new JobFault(
          file + " is there and isn't of an earlier batch", "choose another directory");
    }
  }

  /** Those of a file; null if it isn't such a one. */
  public static BatchFile read(Path file) {
    try {
      JsonNode root = MAPPER.readTree(file.toFile());
      if (!root.path("schema").asText().equals(SCHEMA)) {
        return null;
      }
      List<String> jobs = new ArrayList<>();
      root.path("list").forEach(job -> jobs.add(job.asText()));
      List<JobResult> results = new ArrayList<>();
      root.path("jobs").forEach(result -> results.add(result(result)));
      return new BatchFile(Share.of(root.path("share").asText()), jobs, results);
    } catch (IOException | IllegalArgumentException e) {
      return null;
    }
  }

  private static JobResult result(JsonNode node) {
    SortedMap<String, Integer> warnings = new TreeMap<>();
    node.path("warnings")
        .properties()
        .forEach(code -> warnings.put(code.getKey(), code.getValue().asInt()));
    return new JobResult(
        node.path("job").asText(),
        node.path("exit").asInt(),
        node.path("message").asText(),
        node.path("seconds").asDouble(),
        node.path("total_s").asDouble(),
        warnings,
        node.path("earlier").asBoolean());
  }

  /** The text, LF at the end. */
  public String text() {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("schema", SCHEMA).put("share", share.toString());
    ArrayNode list = root.putArray("list");
    jobs.forEach(list::add);
    ArrayNode all = root.putArray("jobs");
    for (JobResult result : results) {
      ObjectNode one =
          all.addObject()
              .put("job", result.job())
              .put("exit", result.exit())
              .put("message", result.message())
              .put("seconds", Math.round(1000 * result.seconds()) / 1000.0)
              .put("total_s", result.totalS());
      ObjectNode codes = one.putObject("warnings");
      result.warnings().forEach(codes::put);
      if (result.earlier()) {
        one.put("earlier", true);
      }
    }
    return root.toPrettyString().replace("\r\n", "\n") + "\n";
  }

  /**
   * Writes it beside the jobs' outputs; an earlier one is replaced at once.
   *
   * @throws JobFault if it can't be written
   */
  public void write(Path directory) {
    String name = name(share);
    Path part = directory.resolve("." + name + ".part");
    try {
      Files.createDirectories(directory);
      Files.write(part, text().getBytes(StandardCharsets.UTF_8));
      Files.move(part, directory.resolve(name), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new JobFault(
          "can't write " + name + " in " + directory + ": " + IoReason.of(e),
          "make room, and start again: what is done stays done");
    }
  }
}
