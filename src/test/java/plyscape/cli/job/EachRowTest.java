package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;

/** A job for each row of a table. */
class EachRowTest {

  @TempDir Path folder;
  private SmallJob files;
  private Path job;
  private Path table;
  private Path out;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
    job = files.job("job.yaml", "");
    table =
        files.write(
            "places.csv",
            """
            name,terrain.bands,terrain.plies,sanding
            north,[80],"high, low",0.1
            south moor,[75],"[high, low]",0.2
            """);
    out = folder.resolve("out");
  }

  @Test
  void eachRow_isPlannedUnderItsName_asTheSameJobByHand() throws IOException {
    Run run = plan();
    assertEquals(0, run.code(), run.err() + run.out());
    Path alone = folder.resolve("alone");
    Run same =
        Run.of(
            "plan",
            job,
            "-o",
            alone,
            "--set",
            "name=south moor",
            "--set",
            "terrain.bands=[75]",
            "--set",
            "sanding=0.2");
    assertEquals(0, same.code(), same.err());
    for (String file : List.of("passes/01-end-mill-3.nc", "report.html")) {
      assertEquals(
          Files.readString(alone.resolve(file)),
          Files.readString(out.resolve("south moor").resolve(file)));
    }
  }

  @Test
  void aNewRow_isPlanned_andTheOthersStay() throws IOException {
    plan();
    Files.writeString(table, Files.readString(table) + "west,[78],\"high,low\",0.1\n");
    assertEquals(List.of("unchanged", "unchanged", "done"), verbs());
    Files.writeString(table, Files.readString(table).replace("[75]", "[76]"));
    assertEquals(List.of("unchanged", "done", "unchanged"), verbs());
    assertEquals(List.of("done", "done", "done"), verbs("--all"));
    assertEquals(List.of("unchanged", "unchanged"), verbs("--share", "1/2"));
    assertEquals(List.of("unchanged"), verbs("--share", "2/2"));
    Files.delete(out.resolve("batch.json"));
    Run gathered = Run.of("gather", out);
    assertEquals("3 jobs, all there\n", gathered.out());
  }

  @Test
  void faultsOfAllRows_comeBeforeTheFirstIsPlanned() {
    files.write(
        "places.csv",
        """
        name,terrain.bands,sandign,top
        north,[80],0.1,leave
        south,"70, 80","0,2",middle
        a/b,x,0.1,leave
        """);
    Run run = plan();
    assertEquals(2, run.code());
    List<String> lines = run.err().lines().toList();
    assertEquals("plyscape: 5 faults, nothing was planned", lines.get(0));
    String csv = table.toString();
    assertTrue(lines.get(1).startsWith(csv + ":1:20: unknown key \"sandign\"; did you mean"));
    assertTrue(lines.get(2).startsWith(csv + ":3:7: terrain.bands: a break at 80"), lines.get(2));
    assertTrue(lines.get(3).startsWith(csv + ":3:22: top: found \"middle\""), lines.get(3));
    assertTrue(lines.get(4).startsWith(csv + ":4:1: name: found \"a/b\""), lines.get(4));
    assertTrue(lines.get(5).startsWith(csv + ":4:5: terrain.bands: found \"x\""), lines.get(5));
    assertFalse(Files.exists(out));
  }

  @Test
  void decimalCommas_areToldWithWhatTheyShouldBe() {
    files.write("places.csv", "name,sanding\nnorth,\"0,2\"\n");
    Run run = plan();
    assertEquals(
        "plyscape: "
            + table
            + ":2:7: sanding: found \"0,2\"; wanted a number, mm, 0 to 10; decimals take a point,"
            + " thousands nothing: 0.2\n",
        run.err());
  }

  @Test
  void aFaultOfTheJobItself_isToldOnce() {
    files.job("job.yaml", "top: middle\n");
    Run run = plan();
    assertEquals(2, run.code());
    assertTrue(run.err().startsWith("plyscape: " + job + ":4:6: top: found"), run.err());
    assertEquals(1, run.err().lines().count());
  }

  @Test
  void whatTheTableSets_theCommandLineDoesnt() {
    Run run = plan("--sanding", "0.3");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("found --sanding and a column \"sanding\""), run.err());
    assertEquals(2, Run.of("plan", job, files.job("b.yaml", ""), "--each", table).code());
  }

  private Run plan(Object... more) {
    Object[] args = {"plan", job, "--each", table, "-o", out};
    return Run.of(Stream.concat(Arrays.stream(args), Arrays.stream(more)).toArray());
  }

  private List<String> verbs(Object... more) {
    return plan(more)
        .out()
        .lines()
        .map(line -> line.contains(", unchanged") ? "unchanged" : line.split(" ")[0])
        .toList();
  }
}
