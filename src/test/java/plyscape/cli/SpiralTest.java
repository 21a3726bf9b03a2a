package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code tools[].spiral}: told in the program's head and on the page; the paths stay the same. */
class SpiralTest {

  @TempDir Path folder;

  private Path planned(String name, String spiral) {
    Path out = folder.resolve(name);
    Path job =
        new SmallJob(folder)
            .job(name + ".yaml", "tools: [{name: mill, diameter: 2" + spiral + "}]\n");
    Run run = Run.of("plan", job, "-o", out, "-q");
    assertEquals(0, run.code(), run.err());
    return out;
  }

  private static List<String> moves(Path out) throws IOException {
    return Files.readString(out.resolve("passes/01-mill.nc"))
        .lines()
        .filter(line -> !line.startsWith("("))
        .toList();
  }

  /** The head's comments as one text, however its lines are broken. */
  private static String head(Path out) throws IOException {
    return String.join(
        " ",
        Files.readString(out.resolve("passes/01-mill.nc"))
            .lines()
            .takeWhile(line -> line.startsWith("("))
            .map(line -> line.substring(1, line.length() - 1).strip())
            .toList());
  }

  @Test
  void eachWay_isToldInHeadAndReport_andCutsAlike() throws IOException {
    Path unsaid = planned("unsaid", "");
    assertFalse(head(unsaid).contains("spiral"), head(unsaid));
    assertFalse(Files.readString(unsaid.resolve("report.html")).contains("-cut:"));
    String[][] ways = {
      {"up-cut", "clears chips, but lifts the fibres of the top ply at its edges"},
      {"down-cut", "presses the fibres down for clean edges, but packs chips in slots"}
    };
    for (String[] way : ways) {
      Path out = planned(way[0], ", spiral: " + way[0]);
      String note = way[0] + ": " + way[1];
      assertTrue(head(out).contains("spiral: " + note), head(out));
      assertTrue(
          Files.readString(out.resolve("report.html")).contains("mill is " + note + "."), note);
      assertEquals(moves(unsaid), moves(out));
      assertEquals(0, Run.of("verify", out, "-q").code());
    }
  }

  @Test
  void anotherWord_isRefusedWithThoseThatWouldDo() {
    Path job =
        new SmallJob(folder).job("job.yaml", "tools: [{name: mill, diameter: 2, spiral: upcut}]\n");
    Run run = Run.of("plan", job, "-o", folder.resolve("out"));
    assertEquals(2, run.code());
    assertTrue(
        run.err().contains("tools[1].spiral") || run.err().contains("spiral: found"), run.err());
    assertTrue(run.err().contains("up-cut") && run.err().contains("down-cut"), run.err());
  }
}
