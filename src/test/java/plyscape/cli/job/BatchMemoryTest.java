package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.SmallJob;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.talk.Console;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.output.OutputKind;
import plyscape.plan.PanelStore;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.plan.UsualOptions;

/** Jobs that run out of memory, or meet a fault of the program's own, beside sound ones. */
class BatchMemoryTest {

  @TempDir Path folder;
  private final AtomicInteger tries = new AtomicInteger();

  /** Fails in the job named hungry so many times, and always in the one named broken. */
  private record Failing(Stages usual, AtomicInteger tries, int times) implements StagesDecorator {
    @Override
    public Plan plan(
        Job job, PlanOptions options, Progress progress, Warnings warnings, PanelStore panels) {
      if (job.name().equals("hungry") && tries.incrementAndGet() <= times) {
        throw new OutOfMemoryError("Java heap space");
      }
      if (job.name().equals("broken")) {
        throw new StackOverflowError();
      }
      return usual.plan(job, options, progress, warnings, panels);
    }
  }

  @Test
  void oneThatIsTooLargeForAll_failsAlone_afterASecondTryByItself() {
    assertEquals(List.of(0, 1, 70, 0), codes(2, 99));
    assertEquals(2, tries.get());
  }

  @Test
  void oneThatIsTooLargeBesideOthers_isDoneByItself() {
    assertEquals(List.of(0, 0, 70, 0), codes(2, 1));
  }

  @Test
  void oneAtATime_thereIsNoSecondTry() {
    assertEquals(List.of(0, 1, 70, 0), codes(1, 1));
  }

  private List<Integer> codes(int atATime, int times) {
    SmallJob files = new SmallJob(folder);
    Stages stages = new Failing(new PlanStages(), tries, times);
    List<JobRun> runs =
        List.of("first", "hungry", "broken", "last").stream()
            .map(name -> run(stages, files.job(name + ".yaml", ""), name))
            .toList();
    PrintStream none = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
    Console console = new Console(none, none, false, false, false);
    JobTalk talk = new JobTalk(console, stages, new CommonOptions(), false);
    return new Batch(console, talk, atATime).run(runs).stream().map(BatchLine::exitCode).toList();
  }

  private JobRun run(Stages stages, Path file, String name) {
    JobInputs.Source source = new JobInputs.FileSource(name, file, List.of());
    JobRun.Target target =
        new JobRun.Target(
            folder.resolve("out").resolve(name), OutputKind.PLAN, true, false, JobRun.Reuse.OUTPUT);
    return new JobRun(stages, source, UsualOptions.WHOLE, target);
  }
}
