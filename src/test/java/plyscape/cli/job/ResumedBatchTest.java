package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;
import plyscape.files.FileDigest;

/** A batch that is run again does what is missing or changed, and nothing else. */
class ResumedBatchTest {

  private static final String SECONDS = "\"seconds\" : [0-9.E-]+";

  @TempDir Path folder;
  private SmallJob files;
  private Path out;
  private Path list;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
    out = folder.resolve("out");
    files.job("a.yaml", "");
    files.job("b.yaml", "sanding: 0.2\n");
    files.write(
        "tiles.yaml",
        """
        layup: layup.yaml
        terrain: {file: terrain.asc, plies: [high, low], smoothing: 0, crs: "EPSG:32632"}
        panel: {width: 30, height: 30, border: 3, tiles: [2, 1]}
        """);
    list = files.write("jobs.txt", "a.yaml\nb.yaml\ntiles.yaml\n");
  }

  @Test
  void wholeOutputs_areLeftAsTheyAre() throws IOException {
    assertEquals(List.of("done", "done", "done"), verbs());
    SortedMap<String, String> first = contents();
    assertEquals(List.of("unchanged", "unchanged", "unchanged"), verbs());
    assertEquals(first, contents());
    assertEquals(List.of("done", "done", "done"), verbs("--all"));
    assertEquals(first, contents());
  }

  @Test
  void whatIsMissingOrChanged_isDoneAgain() throws IOException {
    verbs();
    Files.delete(out.resolve("a/setup.html"));
    assertEquals(List.of("done", "unchanged", "unchanged"), verbs());
    Files.write(out.resolve("tiles/tile-2-1/preview.png"), new byte[0]);
    assertEquals(List.of("unchanged", "unchanged", "done"), verbs());
    files.job("b.yaml", "sanding: 0.3\n");
    assertEquals(List.of("unchanged", "done", "unchanged"), verbs());
    assertEquals(List.of("done", "done", "done"), verbs("--layers", "dxf", "--pictures", "risk"));
    Files.delete(out.resolve("a/layers/01-high.dxf"));
    Files.delete(out.resolve("tiles/tile-1-1/risk.png"));
    assertEquals(
        List.of("done", "unchanged", "done"), verbs("--layers", "dxf", "--pictures", "risk"));
    assertEquals(List.of("done", "done", "done"), verbs("--layers", "dxf"));
    assertEquals(List.of("done", "done", "done"), verbs("--layers", "dxf", "--sanding", "0.15"));
    files.write("terrain.prj", "PROJCS[\"x\"]");
    assertFalse(verbs("--layers", "dxf", "--sanding", "0.15").contains("unchanged"));
  }

  @Test
  void whatIsNotOurs_isNeverReplaced() throws IOException {
    verbs();
    Files.writeString(out.resolve("a/notes.txt"), "mine");
    files.job("a.yaml", "sanding: 0.3\n");
    Run run = Run.of("plan", "--list", list, "-o", out);
    assertEquals(1, run.code(), run.out());
    assertTrue(run.out().contains("failed  a: ") && run.out().contains("notes.txt"), run.out());
    assertTrue(run.err().contains("3 jobs, 1 failed, 2 unchanged\nfailed  a: "), run.err());
    assertEquals("mine", Files.readString(out.resolve("a/notes.txt")));
    Files.writeString(out.resolve("batch.json"), "{}");
    assertEquals(1, Run.of("plan", "--list", list, "-o", out).code());
    assertEquals("{}", Files.readString(out.resolve("batch.json")));
  }

  @Test
  void batchFile_tellsHowEachWent_sorted() throws IOException {
    files.write("jobs.txt", "b.yaml\ngone.yaml\na.yaml\n");
    assertEquals(1, Run.of("plan", "--list", list, "-o", out).code());
    JsonNode root = new ObjectMapper().readTree(out.resolve("batch.json").toFile());
    assertEquals("[\"b\",\"gone\",\"a\"]", root.get("list").toString());
    JsonNode jobs = root.get("jobs");
    assertEquals("a", jobs.get(0).get("job").asText());
    assertEquals(1, jobs.get(0).at("/warnings/tools-assumed").asInt());
    assertTrue(jobs.get(0).get("seconds").asDouble() > 0);
    assertEquals(2, jobs.get(2).get("exit").asInt());
    assertTrue(jobs.get(2).get("message").asText().contains("gone.yaml"));
  }

  @Test
  void shares_makeTheWholeTogether() throws IOException {
    verbs();
    SortedMap<String, String> whole = contents();
    out = folder.resolve("shared");
    assertEquals(List.of("done", "done"), verbs("--share", "1/2"));
    assertEquals(List.of("done"), verbs("--share", "2/2"));
    assertTrue(Files.exists(out.resolve("batch-2-of-2.json")));
    whole.keySet().removeIf(name -> name.startsWith("batch"));
    SortedMap<String, String> shared = contents();
    shared.keySet().removeIf(name -> name.startsWith("batch"));
    assertEquals(whole, shared);
    assertEquals(2, Run.of("plan", "--list", list, "-o", out, "--share", "3/2").code());
  }

  @Test
  void aListOfOne_getsADirectoryToo_andNoInputIsAFault() {
    files.write("jobs.txt", "a.yaml\n");
    assertEquals(List.of("done"), verbs());
    assertTrue(Files.exists(out.resolve("a/plan.json")));
    Run none = Run.of("plan", "-o", out);
    assertEquals(2, none.code());
    assertTrue(none.err().contains("Missing required parameter"), none.err());
  }

  private List<String> verbs(Object... more) {
    Object[] args = {"plan", "--list", list, "-o", out};
    Run run = Run.of(Stream.concat(Arrays.stream(args), Arrays.stream(more)).toArray());
    return run.out()
        .lines()
        .map(line -> line.contains(", unchanged") ? "unchanged" : line.split(" ")[0])
        .toList();
  }

  /** All files, with the clock's seconds left out. */
  private SortedMap<String, String> contents() throws IOException {
    SortedMap<String, String> contents = SmallJob.contents(out);
    contents.computeIfPresent(
        "batch.json", (name, text) -> text.replaceAll(SECONDS, "\"seconds\" : 0"));
    contents.replaceAll((name, text) -> name.equals("batch.json") ? text : FileDigest.ofText(text));
    return contents;
  }
}
