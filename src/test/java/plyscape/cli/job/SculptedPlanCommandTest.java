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
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;

/** {@code plan} and {@code verify} of a sculpted job from the shell's side. */
class SculptedPlanCommandTest {

  private static final String MORE =
      """
      surface: sculpted
      tools:
        - {name: end mill 2, diameter: 2}
        - {name: ball 3, shape: ball, diameter: 3}
      """;

  @TempDir static Path folder;

  /** What plan wrote; tests that spoil something work on a copy. */
  private static Path planned;

  @BeforeAll
  static void plan() {
    planned = folder.resolve("out");
    Run run = Run.of("plan", new SmallJob(folder).job("job.yaml", MORE), "-o", planned, "-q");
    assertEquals(0, run.code(), run.err());
  }

  private static Path copy() throws IOException {
    Path copy = folder.resolve("copy");
    try (Stream<Path> walk = Files.walk(planned)) {
      for (Path from : walk.toList()) { // directories come before what is in them
        Files.copy(from, copy.resolve(planned.relativize(from)));
      }
    }
    return copy;
  }

  private static String edited(Path file, String from, String to) throws IOException {
    String text = Files.readString(file);
    assertTrue(text.contains(from), from);
    Files.writeString(file, text.replaceFirst(java.util.regex.Pattern.quote(from), to));
    return text;
  }

  @Test
  void plan_writesTheFaces_andSaysTheirDepths_andVerifyAgrees() throws IOException {
    Path out = planned;
    assertTrue(Files.exists(out.resolve("faces/faces.json")));
    assertTrue(Files.exists(out.resolve("faces/relief.png")));
    JsonNode plan = new ObjectMapper().readTree(Files.readString(out.resolve("plan.json")));
    assertEquals("sculpted", plan.path("surface").path("kind").asText());
    JsonNode low = plan.path("plies").path(1);
    double upper = low.path("finished_mm").path(0).asDouble();
    double lower = low.path("finished_mm").path(1).asDouble();
    // Inside the ply by what it needs, from 1 to 2 mm (src/contract.md, section 3).
    assertEquals(1 + low.path("needed_mm").asDouble(), upper, 1e-9);
    assertEquals(2 - low.path("needed_mm").asDouble(), lower, 1e-9);
    assertEquals(low.path("cut_mm").path(0).asDouble() + 0.1, upper, 1e-9);
    assertFalse(plan.path("plies").path(0).has("cut_mm"), "the top ply is left");
    JsonNode last = plan.path("passes").path(plan.path("passes").size() - 1);
    assertEquals("ball 3", last.path("tool").asText());
    assertTrue(Files.readString(out.resolve("report.html")).contains("follow the sculpted faces"));

    Run verify = Run.of("verify", out, "--json");
    assertEquals(0, verify.code(), verify.err());
    JsonNode proof = new ObjectMapper().readTree(verify.out());
    assertEquals(
        plan.path("verification").path("matched_share").asDouble(),
        proof.findValue("matched_share").asDouble(),
        1e-4);
  }

  @Test
  void spoiledPrograms_andSpoiledFaces_areFound() throws IOException {
    Path out = copy();
    Path faces = out.resolve("faces/faces.json");
    String text = edited(faces, "\"rings\" : ", "\"rings\" : 7");
    Run rings = Run.of("verify", out);
    assertEquals(2, rings.code(), rings.err());
    assertTrue(rings.err().contains("outlines of the layer"), rings.err());
    Files.writeString(faces, text.replace("\"columns\" : ", "\"columns\" : 1"));
    Run size = Run.of("verify", out);
    assertEquals(2, size.code(), size.err());
    assertTrue(size.err().contains("relief"), size.err());
    Files.writeString(faces, text);

    Path program = out.resolve("passes/02-ball-3.nc");
    String nc = Files.readString(program);
    String deeper = nc.replaceFirst("(?s)(G1 Z-\\d\\.\\d+ F\\d+\\n)", "$1Z-1.95\n");
    assertFalse(nc.equals(deeper));
    Files.writeString(program, deeper);
    Run gouge = Run.of("verify", out);
    assertEquals(3, gouge.code(), gouge.out() + gouge.err());
    assertTrue(gouge.err().contains("gouged"), gouge.err());
  }

  @Test
  void sculptedSample_isRead() {
    Warnings warnings = new Warnings();
    assertTrue(
        JobReader.read(Path.of("samples/tarn-hollow/sculpted.yaml"), List.of(), warnings)
            .surface()
            .sculpted());
  }
}
