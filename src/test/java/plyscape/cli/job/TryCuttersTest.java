package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;

class TryCuttersTest {

  @TempDir Path folder;
  private SmallJob files;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
  }

  @Test
  void everySetIsPlannedAndNothingWritten() throws Exception {
    Path job = files.job("job.yaml", "tools: [{diameter: 3}, {diameter: 1.5, stepdown: 1}]\n");
    List<String> before = names();
    Run run = Run.of("plan", job, "--try-cutters", "--json");
    assertEquals(0, run.code(), run.err());
    assertEquals(before, names());
    JsonNode sets = new ObjectMapper().readTree(run.out());
    assertEquals(7, sets.size(), "its own, four more, two less");
    JsonNode own = sets.get(0);
    assertEquals(
        List.of("end mill 3", "end mill 1.5"),
        own.get("tools").findValues("name").stream().map(JsonNode::asText).toList());
    for (JsonNode set : sets) {
      assertTrue(set.get("cut_s").doubleValue() > 0, set.toString());
      assertEquals(
          set.get("cut_s").doubleValue() + 60 * (set.get("used").size() - 1),
          set.get("total_s").doubleValue(),
          1e-9);
      assertEquals(2, set.get("plies").intValue());
    }
    // The ground's rings are wide, and their inner corners are all that a thicker cutter loses.
    JsonNode thick = sets.get(6);
    assertEquals(1, thick.get("tools").size());
    assertTrue(thick.get("lost_mm2").doubleValue() >= own.get("lost_mm2").doubleValue(), run.out());
    // The same job planned as usual takes what the table says.
    Run plain = Run.of("plan", job, "-o", folder.resolve("out"), "--json");
    assertEquals(
        new ObjectMapper().readTree(plain.out()).get("time").get("total_s").doubleValue(),
        own.get("cut_s").doubleValue());
  }

  @Test
  void setThatCannotDoIt_isALineWithTheReason() {
    Path job =
        files.job(
            "job.yaml",
            "tools: [{diameter: 3, flute_length: 1.2, stepdown: 1}, {diameter: 2}, {diameter:"
                + " 6}]\n");
    Run run = Run.of("plan", job, "--try-cutters", "-q");
    assertEquals(0, run.code(), run.err());
    assertEquals("", run.err());
    assertTrue(run.out().contains("cutting min  changes  in all min  plies  lost mm2"), run.out());
  }

  @Test
  void noSetCanDoIt_isNoJob() {
    Path job = files.job("job.yaml", "machine: {travel: [20, 20, 80]}\n");
    Run run = Run.of("plan", job, "--try-cutters");
    assertEquals(1, run.code());
    assertTrue(run.err().contains("mm of X travel"), run.err());
  }

  @Test
  void severalJobs_areAUsageError() {
    Path job = files.job("job.yaml", "");
    Run run = Run.of("plan", job, files.job("other.yaml", ""), "--try-cutters");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("found 2 jobs; --try-cutters takes one"), run.err());
  }

  @Test
  void planWithoutADirectory_isAUsageError() {
    Run run = Run.of("plan", files.job("job.yaml", ""));
    assertEquals(2, run.code());
    assertTrue(run.err().contains("Missing required option: '--output=DIR'"), run.err());
  }

  private List<String> names() throws Exception {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
