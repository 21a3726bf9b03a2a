package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;

class BatchTest {

  @TempDir Path folder;
  private SmallJob files;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
  }

  @Test
  void aFailedJob_doesntStopTheOthers_andTheBatchFails() {
    Path good = files.job("good.yaml", "");
    Path impossible = files.job("impossible.yaml", "minimum_floor: 9\n");
    Path bad = files.job("bad.yaml", "top: middle\n");
    Path last = files.job("last.yaml", "sanding: 0.2\n");
    Path out = folder.resolve("out");
    Run run = Run.of("plan", good, impossible, bad, last, "-o", out);
    assertEquals(1, run.code(), run.err());
    List<String> lines = run.out().lines().toList();
    assertEquals(4, lines.size(), run.out());
    assertTrue(
        lines.get(0).startsWith("done    good -> " + out.resolve("good") + ", "), lines.get(0));
    assertTrue(lines.get(1).startsWith("failed  impossible: "), lines.get(1));
    assertTrue(
        lines.get(2).startsWith("failed  bad: " + bad + ":4:6: top: found \"middle\""),
        lines.get(2));
    assertTrue(lines.get(3).startsWith("done    last -> "), lines.get(3));
    assertTrue(run.err().contains("4 jobs, 2 failed"), run.err());
    assertTrue(Files.exists(out.resolve("last/plan.json")));
    assertFalse(Files.exists(out.resolve("bad")));
    assertFalse(Files.exists(out.resolve("impossible")));
    assertEquals(1, Run.of("plan", good, impossible, "-o", folder.resolve("out1")).code());
  }

  @Test
  void warningsOfEachJob_areNamed() throws IOException {
    Path a = files.job("a.yaml", "");
    Run run = Run.of("preview", a, files.job("b.yaml", "sanding: 0.2\n"));
    assertTrue(
        run.out().lines().findFirst().orElseThrow().endsWith("1 warning (tools-assumed)"),
        run.out());
    Run json = Run.of("preview", a, files.job("c.yaml", ""), "--json");
    JsonNode line = new ObjectMapper().readTree(json.out().lines().findFirst().orElseThrow());
    assertEquals(1, line.at("/warning_codes/tools-assumed").asInt(), json.out());
  }

  @Test
  void dryRunOfSeveral_listsWhatEachWouldWrite_andWritesNothing() throws IOException {
    Path a = files.job("a.yaml", "");
    Path b = files.job("b.yaml", "");
    Path out = folder.resolve("dry");
    Run run = Run.of("plan", a, b, "-o", out, "--dry-run");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().startsWith("planned a -> " + out.resolve("a")), run.out());
    assertTrue(run.out().contains("would write ") && run.out().contains("plan.json  "), run.out());
    assertFalse(Files.exists(out));
    Run json = Run.of("plan", a, b, "-o", out, "--dry-run", "--json");
    JsonNode line = new ObjectMapper().readTree(json.out().lines().findFirst().orElseThrow());
    assertTrue(line.get("would_write").get("plan.json").asLong() > 100, json.out());
  }

  @Test
  void severalAtATime_writeTheSameBytes() throws IOException {
    Path a = files.job("a.yaml", "");
    Path b = files.job("b.yaml", "sanding: 0.2\n");
    Path c = files.job("c.yaml", "top: mid\n");
    assertEquals(0, Run.of("plan", a, b, c, "-o", folder.resolve("one"), "--jobs", 1).code());
    Run two = Run.of("plan", a, b, c, "-o", folder.resolve("two"), "--jobs", 3, "--json");
    assertEquals(0, two.code(), two.err());
    Files.delete(folder.resolve("one/batch.json")); // it holds seconds by the clock
    Files.delete(folder.resolve("two/batch.json"));
    assertEquals(
        SmallJob.contents(folder.resolve("one")), SmallJob.contents(folder.resolve("two")));
    JsonNode first = new ObjectMapper().readTree(two.out().lines().findFirst().orElseThrow());
    assertEquals("a", first.path("job").asText());
    assertEquals(0, first.path("exit").asInt());
    assertTrue(first.path("total_s").asDouble() > 0);
  }

  @Test
  void names_areShortAndDiffer() {
    assertEquals(
        Map.of(
            Path.of("a/job.yaml"),
            "a",
            Path.of("b/job.yaml"),
            "b",
            Path.of("c/moor.yaml"),
            "moor",
            Path.of("d/moor.yaml"),
            "moor-2"),
        JobNames.distinct(
            List.of(
                Path.of("a/job.yaml"),
                Path.of("b/job.yaml"),
                Path.of("c/moor.yaml"),
                Path.of("d/moor.yaml"),
                Path.of("c/moor.yaml"))));
    assertEquals(
        List.of("x-2", "x", "x-3"),
        List.copyOf(
            JobNames.distinct(List.of(Path.of("x-2.yaml"), Path.of("x.yaml"), Path.of("y/x.yaml")))
                .values()));
  }
}
