package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.output.FileSink;
import plyscape.output.OutputKind;
import plyscape.plan.PanelPlan;
import plyscape.plan.Plan;
import plyscape.plan.Progress;
import plyscape.plan.TiledPlan;
import plyscape.plan.UsualOptions;

/** A landscape over four panels whose run is stopped, and the next run for the same output. */
class StoppedWallTest {

  @TempDir Path folder;
  private Path out;

  /** What a run gives that isn't stopped. */
  private static SortedMap<String, String> undisturbed;

  /** Ends a run while it writes a panel, whose files are there but not in place. */
  private static final class Ending implements StagesDecorator {
    private final Throwable end;
    private int before;

    Ending(Throwable end, int before) {
      this.end = end;
      this.before = before;
    }

    @Override
    public Stages usual() {
      return new PlanStages();
    }

    @Override
    public void write(Plan plan, FileSink sink) {
      usual().write(plan, sink);
      if (plan instanceof PanelPlan && before-- == 0) {
        Ending.<RuntimeException>sneak(end);
      }
    }

    @SuppressWarnings("unchecked")
    private static <T extends Throwable> void sneak(Throwable thrown) throws T {
      throw (T) thrown;
    }
  }

  @BeforeAll
  static void runUndisturbed(@TempDir Path folder) throws IOException {
    job(folder, "");
    run(folder, folder.resolve("whole"), new PlanStages());
    undisturbed = SmallJob.contents(folder.resolve("whole"));
  }

  @BeforeEach
  void makeFiles() {
    job(folder, "");
    out = folder.resolve("out");
  }

  private static void job(Path folder, String more) {
    new SmallJob(folder)
        .write(
            "wall.yaml",
            """
            layup: layup.yaml
            terrain: {file: terrain.asc, plies: [high, low], smoothing: 0, crs: "EPSG:32632"}
            panel: {width: 20, height: 20, border: 3, tiles: [2, 2]}
            """
                + more);
  }

  private JobRun.Outcome run(Stages stages) {
    return run(folder, out, stages);
  }

  private static JobRun.Outcome run(Path folder, Path out, Stages stages) {
    JobInputs.Source source =
        new JobInputs.FileSource("wall", folder.resolve("wall.yaml"), List.of());
    JobRun.Target target =
        new JobRun.Target(out, OutputKind.PLAN, false, false, JobRun.Reuse.PANELS);
    JobRun run = new JobRun(new TiledStages(stages), source, UsualOptions.WHOLE, target);
    return run.run(Progress.NONE, new Warnings());
  }

  private void stopped(Throwable by) {
    stopped(by, 2);
  }

  private void stopped(Throwable by, int before) {
    Throwable thrown = assertThrows(by.getClass(), () -> run(new Ending(by, before)));
    assertEquals(by, thrown);
    assertTrue(Files.notExists(out));
  }

  private static long earlier(JobRun.Outcome outcome) {
    return ((TiledPlan) outcome.plan()).tiles().stream().filter(t -> t.plan().earlier()).count();
  }

  private List<String> hidden() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(path -> path.getFileName().toString())
          .filter(name -> name.startsWith("."))
          .toList();
    }
  }

  @Test
  void theNextRun_cutsOnlyWhatIsMissing_andGivesTheSameBytes() throws IOException {
    stopped(new OutOfMemoryError("Java heap space"));
    assertEquals(1, hidden().size());
    JobRun.Outcome next = run(new PlanStages());
    assertEquals(2, earlier(next));
    assertEquals(undisturbed, SmallJob.contents(out));
    assertEquals(undisturbed.keySet(), next.files().keySet());
    assertEquals(List.of(), hidden());
    assertTrue(
        JobRun.summary(next, new Warnings(), false)
            .contains("2 of 4 panels were there from a run that was stopped"));
  }

  @Test
  void aSecondStop_losesNothingOfTheFirst() throws IOException {
    stopped(new OutOfMemoryError());
    stopped(new StackOverflowError(), 1);
    assertEquals(3, earlier(run(new PlanStages())));
  }

  @Test
  void panelsOfOtherInputs_orThatLackAFile_areCutAnew() throws IOException {
    stopped(new OutOfMemoryError());
    Path part = folder.resolve(hidden().get(0));
    Files.delete(part.resolve("tile-1-2/setup.html"));
    assertEquals(1, earlier(run(new PlanStages())));
    assertEquals(undisturbed, SmallJob.contents(out));
    out = folder.resolve("other");
    stopped(new OutOfMemoryError());
    job(folder, "sanding: 0.2\n");
    assertEquals(0, earlier(run(new PlanStages())));
    assertEquals(
        SmallJob.contents(out).keySet(), undisturbed.keySet(), "nothing else came into it");
  }

  @Test
  void aJobThatCantBeDone_leavesNothing() throws IOException {
    stopped(new JobFault("no", "no"));
    assertEquals(List.of(), hidden());
  }

  @Test
  void all_cutsEveryPanelAnew() throws IOException {
    stopped(new OutOfMemoryError());
    Run all = Run.of("plan", folder.resolve("wall.yaml"), "-o", out, "--all");
    assertEquals(0, all.code(), all.err());
    assertTrue(!all.err().contains("panels were there"), all.err());
    assertEquals(undisturbed, SmallJob.contents(out));
    assertEquals(List.of(), hidden());
  }
}
