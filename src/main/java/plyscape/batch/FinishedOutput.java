package plyscape.batch;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.files.FileDigest;
import plyscape.files.PlanFiles;
import plyscape.job.Fingerprint;
import plyscape.job.Job;

/**
 * An output of an earlier run that still holds. Immutable.
 *
 * @param totalS its cutting time
 * @param warnings how many of each code, those that several panels share counted once
 */
public record FinishedOutput(double totalS, SortedMap<String, Integer> warnings) {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /**
   * What is there of a job, with its fingerprint taken; empty if a file of it is missing or empty,
   * or it was made of other files or with other options.
   */
  public static Optional<FinishedOutput> of(Path directory, Job job) {
    try {
      List<JsonNode> plans = new ArrayList<>();
      for (Path folder : folders(directory, job.panel())) {
        Optional<JsonNode> plan = plan(folder, job.origin().fingerprint());
        if (plan.isEmpty()) {
          return Optional.empty();
        }
        plans.add(plan.get());
      }
      boolean whole =
          !job.panel().tiled()
              || allThere(directory, Set.of(PlanFiles.TILES, PlanFiles.INDEX, PlanFiles.OVERVIEW));
      return whole ? Optional.of(sum(plans)) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty(); // there is none, or it isn't ours: the run itself will see
    }
  }

  /**
   * The {@code plan.json} of one panel's folder; empty if a file of it is missing or empty, or it
   * was made of other files or with other options.
   *
   * @throws IOException if there is none, or it isn't ours
   */
  public static Optional<JsonNode> plan(Path folder, Fingerprint fingerprint) throws IOException {
    JsonNode plan = MAPPER.readTree(folder.resolve(PlanFiles.PLAN).toFile());
    return made(plan, fingerprint) && allThere(folder, files(plan))
        ? Optional.of(plan)
        : Optional.empty();
  }

  /**
   * Whether a folder holds a whole output of one panel or several, whatever it was made of: one
   * that was copied may have lost files on the way.
   */
  static boolean whole(Path directory) {
    try {
      Path tiles = directory.resolve(PlanFiles.TILES);
      if (!Files.exists(tiles)) {
        return wholePanel(directory);
      }
      for (JsonNode tile : MAPPER.readTree(tiles.toFile()).path("tiles")) {
        if (!wholePanel(directory.resolve(tile.path("directory").asText()))) {
          return false;
        }
      }
      return allThere(directory, Set.of(PlanFiles.INDEX, PlanFiles.OVERVIEW));
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean wholePanel(Path folder) throws IOException {
    return allThere(folder, files(MAPPER.readTree(folder.resolve(PlanFiles.PLAN).toFile())));
  }

  private static List<Path> folders(Path directory, Job.PanelSpec panel) {
    if (!panel.tiled()) {
      return List.of(directory);
    }
    List<Path> folders = new ArrayList<>();
    for (int column = 1; column <= panel.columns(); column++) {
      for (int row = 1; row <= panel.rows(); row++) {
        folders.add(directory.resolve(PlanFiles.tile(column, row)));
      }
    }
    return folders;
  }

  private static boolean made(JsonNode plan, Fingerprint fingerprint) {
    List<FileDigest> inputs = new ArrayList<>();
    for (JsonNode input : plan.path("inputs")) {
      inputs.add(new FileDigest(input.path("path").asText(), input.path("sha256").asText()));
    }
    return inputs.equals(fingerprint.inputs())
        && plan.path("options_sha256").asText().equals(fingerprint.optionsSha256());
  }

  /** Everything that goes with a plan.json. */
  private static Set<String> files(JsonNode plan) {
    Set<String> files =
        new HashSet<>(
            Set.of(PlanFiles.REPORT, PlanFiles.SETUP, PlanFiles.SECTION, PlanFiles.PREVIEW));
    for (JsonNode path : plan.path("paths")) {
      files.add(PlanFiles.pass(path.path("file").asText()));
    }
    for (JsonNode ply : plan.path("plies")) {
      if (ply.path("area_mm2").asDouble() > 0) {
        String name = PlanFiles.layerName(ply.path("number").asInt(), ply.path("name").asText());
        files.add(PlanFiles.layer(name + ".svg"));
        plan.path("more_files").forEach(more -> files.add(more.asText().replace("*", name)));
      }
    }
    if (plan.path("surface").has("faces")) {
      files.add(PlanFiles.FACES);
      files.add(PlanFiles.relief());
    }
    return files;
  }

  private static boolean allThere(Path folder, Set<String> files) throws IOException {
    for (String file : files) {
      Path path = folder.resolve(file);
      if (!Files.isRegularFile(path) || Files.size(path) == 0) {
        return false;
      }
    }
    return true;
  }

  private static FinishedOutput sum(List<JsonNode> plans) {
    double total = 0;
    Set<JsonNode> warnings = new HashSet<>();
    for (JsonNode plan : plans) {
      total += plan.path("time").path("total_s").asDouble();
      plan.path("warnings").forEach(warnings::add);
    }
    SortedMap<String, Integer> codes = new TreeMap<>();
    warnings.forEach(warning -> codes.merge(warning.path("code").asText(), 1, Integer::sum));
    return new FinishedOutput(total, codes);
  }
}
