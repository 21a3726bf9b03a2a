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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;

class PlanCommandTest {

  @TempDir Path folder;
  private SmallJob files;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
  }

  private List<String> names() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  /** The files of src/contract.md, section 7. */
  @Test
  void plan_writesTheContractsFiles_andTheTableOnStdout() throws IOException {
    Path out = folder.resolve("out");
    Run run = Run.of("plan", files.job("job.yaml", ""), "-o", out);
    assertEquals(0, run.code(), run.err());
    assertEquals(
        List.of(
            "layers/01-high.svg",
            "layers/02-low.svg",
            "passes/01-end-mill-3.nc",
            "plan.json",
            "preview.png",
            "report.html",
            "section.png",
            "setup.html"),
        List.copyOf(SmallJob.contents(out).keySet()));
    assertTrue(run.out().contains("low"), run.out());
    assertTrue(run.err().contains("wrote 8 files, "), run.err());
    assertEquals(List.of("job.yaml", "layup.yaml", "out", "terrain.asc"), names());
  }

  @Test
  void quiet_withFiles_printsNothing_andSvgLayersMayBeAskedFor() {
    Path job = files.job("job.yaml", "");
    Run run = Run.of("plan", job, "-o", folder.resolve("q"), "-q", "--layers", "svg");
    assertEquals(0, run.code(), run.err());
    assertEquals("", run.out());
    assertEquals("", run.err());
    assertTrue(Files.exists(folder.resolve("q/layers/02-low.svg")));
    assertTrue(Run.of("preview", job, "-q").out().contains("low"), "without files the table is it");
    assertTrue(
        Run.of("plan", job, "-o", folder.resolve("j"), "-q", "--json").out().startsWith("{"));
  }

  @Test
  void degreesWithoutCrs_areNotCalledMetresToo() {
    files.write(
        "degrees.asc",
        "ncols 3\nnrows 3\nxllcorner 7\nyllcorner 45\ncellsize 0.01\n1 2 3\n4 5 6\n7 8 9\n");
    Run run = Run.of("preview", folder.resolve("degrees.asc"), folder.resolve("layup.yaml"));
    assertEquals(2, run.code());
    assertTrue(run.err().contains("look like degrees"), run.err());
    assertFalse(run.err().contains("metres (terrain.crs"), run.err());
  }

  @Test
  void theJobsFolder_isNearlyTheJob() {
    files.job("job.yaml", "");
    Run run = Run.of("plan", folder, "-o", folder.resolve("out"));
    assertEquals(2, run.code());
    assertTrue(run.err().contains("did you mean " + folder.resolve("job.yaml") + "?"), run.err());
  }

  /** The low ply's middle is 1.5 mm down, less 0.1 of sanding. */
  @Test
  void pliesBelowTheLongestFlutes_areToldAlreadyByThePreview() {
    String tools = "tools: [{diameter: 3, flute_length: 1.2, stepdown: 1}]\n";
    Run run = Run.of("preview", files.job("job.yaml", tools), "-o", folder.resolve("out"));
    assertEquals(0, run.code(), run.err());
    assertTrue(
        run.err()
            .contains(
                "warning short-flutes: ply 2 (low): it is to be cut to 1.400 mm, and the longest"
                    + " flutes have 1.20 mm"),
        run.err());
  }

  @Test
  void theSameJobFromArguments_givesTheSameRegions() throws IOException {
    Path out = folder.resolve("out");
    Run run =
        Run.of(
            "plan",
            folder.resolve("terrain.asc"),
            folder.resolve("layup.yaml"),
            "-o",
            out,
            "--width",
            30,
            "--height",
            30,
            "--border",
            3,
            "--plies",
            "high,low",
            "--smoothing",
            0,
            "--set",
            "terrain.crs=EPSG:32632",
            "-q");
    assertEquals(0, run.code(), run.err());
    assertEquals("", run.err());
    Run.of("plan", files.job("job.yaml", ""), "-o", folder.resolve("out2"));
    assertEquals(
        Files.readString(folder.resolve("out2/layers/02-low.svg")),
        Files.readString(out.resolve("layers/02-low.svg")));
  }

  @Test
  void json_isThePlanAsWritten() throws IOException {
    Run run = Run.of("plan", files.job("job.yaml", ""), "-o", folder.resolve("out"), "--json");
    assertEquals(Files.readString(folder.resolve("out/plan.json")), run.out());
    JsonNode plan = new ObjectMapper().readTree(run.out());
    assertEquals("plyscape-plan-1", plan.path("schema").asText());
  }

  @Test
  void dryRun_listsWhatWouldBeWritten_andWritesNothing() throws IOException {
    Run run = Run.of("plan", files.job("job.yaml", ""), "-o", folder.resolve("a/out"), "--dry-run");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.err().contains("would write 8 files"), run.err());
    assertTrue(run.err().contains("  passes/01-end-mill-3.nc  "), run.err());
    assertEquals(List.of("job.yaml", "layup.yaml", "terrain.asc"), names());
  }

  @Test
  void faults_leaveNothingBehind() throws IOException {
    Path job = files.job("job.yaml", "minimum_floor: 9\n");
    Run run = Run.of("plan", job, "-o", folder.resolve("a/out"));
    assertEquals(1, run.code(), run.err());
    assertEquals("", run.out());
    assertEquals(List.of("job.yaml", "layup.yaml", "terrain.asc"), names());
  }

  /**
   * The span includes the zero point at the lower left: from 0 to the far wall less the cutter's
   * radius, 27 - 1.5.
   */
  @Test
  void axesTooShort_areAMatterOfTheJob() {
    Path job = files.job("job.yaml", "machine: {travel: [300, 25.4, 80]}\n");
    Run run = Run.of("plan", job, "-o", folder.resolve("out"));
    assertEquals(1, run.code(), run.err());
    assertTrue(run.err().contains("needs 25.5 mm of Y travel"), run.err());
    assertEquals(
        0, Run.of("plan", job, "-o", folder.resolve("out"), "--set", "machine.zero=centre").code());
  }

  @Test
  void strict_makesAThinPlyAFault() throws IOException {
    Path job = files.job("job.yaml", "clearance: {minimum: 0.6}\n");
    Run loose = Run.of("plan", job, "-o", folder.resolve("loose"));
    assertEquals(0, loose.code(), loose.err());
    assertTrue(loose.err().contains("warning thin-ply: "), loose.err());
    assertTrue(Files.readString(folder.resolve("loose/plan.json")).contains("\"thin-ply\""));
    Run strict = Run.of("plan", job, "-o", folder.resolve("strict"), "--strict");
    assertEquals(1, strict.code(), strict.err());
    assertFalse(Files.exists(folder.resolve("strict")));
  }

  @Test
  void usageFaults_areExit2() {
    Path job = files.job("job.yaml", "");
    assertEquals(2, Run.of("plan", job).code());
    assertEquals(
        2, Run.of("plan", folder.resolve("terrain.asc"), "-o", folder.resolve("o")).code());
    assertEquals(2, Run.of("plan", job, "-o", folder.resolve("o"), "--set", "panel.width").code());
    assertEquals(2, Run.of("plan", job, "-o", folder.resolve("o"), "--cell", "3").code());
    Run range = Run.of("plan", job, "-o", folder.resolve("o"), "--width", "3");
    assertEquals(2, range.code());
    assertTrue(
        range.err().startsWith("plyscape: --width: found 3; out of the sane range"), range.err());
    assertFalse(Files.exists(folder.resolve("o")));
  }

  @Test
  void preview_writesOnlyThePicture() throws IOException {
    Path out = folder.resolve("p");
    Run run = Run.of("preview", files.job("job.yaml", ""), "-o", out);
    assertEquals(0, run.code(), run.err());
    assertEquals(List.of("preview.png"), List.copyOf(SmallJob.contents(out).keySet()));
    Run again = Run.of("preview", files.job("job.yaml", ""), "-o", out);
    assertEquals(1, again.code());
    assertEquals(0, Run.of("preview", files.job("job.yaml", ""), "-o", out, "--force").code());
    assertEquals(0, Run.of("preview", files.job("job.yaml", "")).code());
  }
}
