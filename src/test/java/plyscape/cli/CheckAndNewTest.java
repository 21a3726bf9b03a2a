package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;

class CheckAndNewTest {

  private static final String LAYUP =
      """
      glue_line: 0.04
      plies:
        - {name: meadow, colour: "#8fbf5a", thickness: 0.9}
        - {name: wood, colour: "#3f7d3a", thickness: 0.8}
      """;

  @TempDir Path folder;

  private Path layup() throws IOException {
    return Files.writeString(folder.resolve("layup.yaml"), LAYUP);
  }

  @Test
  void check_printsTheTable() throws IOException {
    Run run = Run.of("check", layup());
    assertEquals("", run.err());
    assertEquals(0, run.code());
    assertTrue(run.out().contains("wood"), run.out());
    assertTrue(run.out().contains("0.940"), run.out()); // top of the second ply: 0.9 + 0.04
  }

  /** Hand-worked: mid of ply 2 = 0.94 + 0.8 / 2 = 1.34, target = mid - sanding. */
  @Test
  void check_asJson_hasFullPrecision() throws IOException {
    Run run = Run.of("check", layup(), "--json", "--sanding", "0.2");
    JsonNode ply = new ObjectMapper().readTree(run.out()).path("plies").path(1);
    assertEquals(1.34, ply.path("mid_mm").asDouble(), 1e-12);
    assertEquals(1.14, ply.path("target_mm").asDouble(), 1e-12);
  }

  @Test
  void check_ofBadFiles_isExit2WithThePlace() throws IOException {
    Path bad = Files.writeString(folder.resolve("bad.yaml"), LAYUP.replace("0.9}", "thick}"));
    Run run = Run.of("check", bad);
    assertEquals(2, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().startsWith("plyscape: " + bad + ":3:"), run.err());
    assertEquals(2, Run.of("check", folder.resolve("none.yaml")).code());
    Run option = Run.of("check", layup(), "--sanding", "much");
    assertEquals(2, option.code());
    assertTrue(option.err().startsWith("plyscape: --sanding: found \"much\""), option.err());
  }

  @Test
  void controlCharactersOfInputs_dontReachTheTerminal() throws IOException {
    Path bad =
        Files.writeString(
            folder.resolve("bad.yaml"), LAYUP.replace("name: wood", "name: \"\\e[2J\\nwood\""));
    Run run = Run.of("check", bad);
    assertEquals(0, run.code(), run.err());
    assertFalse(run.out().contains("\u001b"));
    Path worse = Files.writeString(folder.resolve("bad.yaml"), LAYUP.replace("0.8", "\"\\e[2J\""));
    Run fault = Run.of("check", worse);
    assertEquals(2, fault.code());
    assertFalse(fault.err().contains("\u001b"), fault.err());
  }

  @Test
  void new_makesAJobThatReads() {
    Path target = folder.resolve("my panel");
    Run run = Run.of("new", target);
    assertEquals(0, run.code(), run.err());
    assertEquals("", run.out());
    Warnings warnings = new Warnings();
    Job job = JobReader.read(target.resolve("job.yaml"), List.of(), warnings);
    assertEquals(7, job.layup().plies().size());
    assertEquals(3, job.zones().size());
    assertTrue(warnings.list().isEmpty());
    Run again = Run.of("new", target);
    assertEquals(1, again.code());
    assertTrue(
        again.err().endsWith("exists and isn't empty; choose another directory\n"), again.err());
  }
}
