package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;

class GatherCommandTest {

  @TempDir Path folder;
  private SmallJob files;
  private Path list;
  private Path one;
  private Path two;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
    files.job("a b.yaml", "");
    files.job("c.yaml", "sanding: 0.2\n");
    list = files.write("jobs.txt", "a b.yaml\nc.yaml\n");
    one = folder.resolve("one");
    two = folder.resolve("two");
  }

  @Test
  void sharesInTwoFolders_areOneSeries() throws IOException {
    assertEquals(0, share("1/2", one));
    Run early = Run.of("gather", one);
    assertEquals(1, early.code(), early.err());
    assertEquals("2 jobs, 1 not there\nmissing c: not planned yet\n", early.out());
    assertEquals(0, share("2/2", two));
    Run whole = Run.of("gather", one, two);
    assertEquals(0, whole.code(), whole.err());
    assertEquals("2 jobs, all there\n", whole.out());
    JsonNode merged = new ObjectMapper().readTree(one.resolve("batch.json").toFile());
    assertEquals("[\"a b\",\"c\"]", merged.get("list").toString());
    assertEquals("c", merged.at("/jobs/1/job").asText());
    String page = Files.readString(one.resolve("index.html"));
    assertTrue(page.contains("href=\"a%20b/report.html\""), page);
    assertTrue(page.contains("href=\"../two/c/report.html\""), page);
    assertEquals(2, page.split("data:image/png;base64,", -1).length - 1);
    assertFalse(page.contains("http:") || page.contains("https:"), page);
    assertEquals(0, Run.of("gather", one, two).code());
    assertEquals(page, Files.readString(one.resolve("index.html")));
  }

  @Test
  void aFailedJob_andOneWhoseOutputIsGone_areMissing() throws IOException {
    files.job("c.yaml", "top: <b>\n");
    assertEquals(1, Run.of("plan", "--list", list, "-o", one).code());
    Files.delete(one.resolve("a b/plan.json"));
    Run run = Run.of("gather", one, "-q");
    assertEquals(1, run.code(), run.err());
    assertTrue(
        run.out().contains("missing a b: its output isn't there, or not all of it\n"), run.out());
    assertTrue(run.out().contains("missing c: " + folder.resolve("c.yaml")), run.out());
    String page = Files.readString(one.resolve("index.html"));
    assertTrue(page.contains("&lt;b&gt;") && !page.contains("<b>"), page);
  }

  @Test
  void whatDoesntBelongTogether_isRefused() throws IOException {
    assertEquals(0, share("1/2", one));
    files.write("jobs.txt", "a b.yaml\n");
    assertEquals(0, share("1/1", two));
    assertFault("of another list", one, two);
    assertFault("holds no batch.json", Files.createDirectory(folder.resolve("none")));
    Files.writeString(one.resolve("index.html"), "<p>mine");
    assertFault("isn't of an earlier series", one);
    Files.writeString(two.resolve("batch.json"), "{");
    assertFault("isn't of a batch", two);
  }

  @Test
  void aListThatGrew_isGathered_onceItsSharesWerePlannedAgain() throws IOException {
    assertEquals(0, share("1/2", one));
    assertEquals(0, share("2/2", one));
    assertEquals(0, Run.of("gather", one).code());
    files.job("d.yaml", "sanding: 0.15\n");
    files.write("jobs.txt", "a b.yaml\nc.yaml\nd.yaml\n");
    assertEquals(0, share("1/2", one));
    assertEquals("3 jobs, 1 not there\nmissing c: not planned yet\n", Run.of("gather", one).out());
    assertEquals(0, share("2/2", one));
    assertEquals("3 jobs, all there\n", Run.of("gather", one).out());
  }

  @Test
  void aStoppedRun_hasJobsThatItDidntComeTo() throws IOException {
    assertEquals(0, share("1/1", one));
    Path batch = one.resolve("batch.json");
    String text = Files.readString(batch);
    Files.writeString(batch, text.replaceFirst("\"exit\"", "\"earlier\" : true, \"exit\""));
    Run run = Run.of("gather", one);
    assertEquals(1, run.code());
    assertTrue(run.out().contains("missing a b: the last run was stopped before it"), run.out());
  }

  @Test
  void anOutputThatLostAFile_isMissing() throws IOException {
    assertEquals(0, share("1/1", one));
    Files.delete(one.resolve("c/passes/01-end-mill-3.nc"));
    Run run = Run.of("gather", one);
    assertEquals(1, run.code());
    assertTrue(run.out().contains("missing c: its output isn't there, or not all"), run.out());
  }

  private int share(String share, Path out) {
    return Run.of("plan", "--list", list, "-o", out, "--share", share).code();
  }

  private static void assertFault(String part, Path... folders) {
    Object[] args = new Object[folders.length + 1];
    args[0] = "gather";
    System.arraycopy(folders, 0, args, 1, folders.length);
    Run run = Run.of(args);
    assertEquals(1, run.code(), run.out());
    assertTrue(run.err().contains(part), run.err());
  }
}
