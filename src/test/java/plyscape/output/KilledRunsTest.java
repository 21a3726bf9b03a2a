package plyscape.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs killed at seeded random moments: what is under the asked name is whole or not there, an
 * earlier output is never lost, and the next run clears up. Six kills by default; {@code
 * -Dkills=200} for the long version.
 */
class KilledRunsTest {

  private static final int KILLS = Integer.getInteger("kills", 6);

  /** A generation takes a few ms, so that this covers every moment of one many times over. */
  private static final int LONGEST_MS = 60;

  @TempDir Path folder;

  @Test
  void killedAtAnyMoment_leavesAWholeOutputOrTheOneBefore() throws Exception {
    Path target = folder.resolve("out");
    Random random = new Random(2026);
    int missing = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      killAfter(target, random.nextInt(LONGEST_MS), random.nextInt(1_000_000));
      if (Files.exists(target)) {
        checkWhole(target, "kill " + kill);
      } else {
        missing++;
      }
      // Opening alone clears up and, if the kill fell between two renames, puts the earlier output
      // back.
      OutputDirectory.open(target, OutputKind.PLAN, true).close();
      checkWhole(target, "after clearing up, kill " + kill);
      assertEquals(List.of("out"), names(), "kill " + kill);
    }
    assertTrue(
        missing <= KILLS / 4 + 1, missing + " of " + KILLS + " kills fell between the two renames");
    EndlessRun.publish(target, "rerun");
    assertEquals(EndlessRun.text("rerun"), Files.readString(target.resolve("plan.json")));
  }

  private static void killAfter(Path target, int millis, int nanos)
      throws IOException, InterruptedException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process process =
        new ProcessBuilder(
                java,
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                EndlessRun.class.getName(),
                target.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      assertEquals("begun", out.readLine());
      waitForTheFirst(target, process);
      Thread.sleep(millis, nanos);
    } finally {
      process.destroyForcibly();
      assertTrue(process.waitFor(20, TimeUnit.SECONDS));
    }
  }

  private static void waitForTheFirst(Path target, Process process) throws InterruptedException {
    while (!Files.exists(target) && process.isAlive()) {
      Thread.sleep(1);
    }
  }

  private static void checkWhole(Path target, String when) throws IOException {
    String text = Files.readString(target.resolve("plan.json"));
    for (int i = 1; i <= EndlessRun.LAYERS; i++) {
      assertEquals(text, Files.readString(target.resolve("layers/" + i + ".svg")), when);
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
