package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.simulate.Verification;

/**
 * Any job that the reader accepts is planned: none is refused for what was planned itself, and no
 * move plunges or bites more than its cutter may, by the simulator from the text of the programs.
 */
class OddJobsTest {

  private static final int JOBS = 40;

  /** Up to four cells of the simulation. */
  private static final double CELLS_MM2 = 0.045;

  @Test
  void oddJobs_arePlanned_andKeepToPlungeAndStepdown(@TempDir Path folder) {
    List<String> faults =
        LongStream.range(0, JOBS)
            .parallel()
            .mapToObj(seed -> fault(seed, folder))
            .filter(text -> !text.isEmpty())
            .toList();
    assertEquals(List.of(), faults);
  }

  private static String fault(long seed, Path folder) {
    String where = "seed " + seed + ": ";
    try {
      PanelPlan plan =
          (PanelPlan)
              Planner.plan(
                  new OddJob(seed).in(folder.resolve("job-" + seed)),
                  PlanOptions.usual(),
                  Progress.NONE,
                  new Warnings());
      Verification v = plan.verification();
      return v.gougedMm2() > 0
              || !v.collisions().isEmpty()
              || v.uncutMm2() > CELLS_MM2
              || v.biteMaxShare() > 1.001
          ? where + v
          : "";
    } catch (RuntimeException e) {
      return where + e;
    }
  }

  /** Tries seeds by hand: a folder, the first, the end. */
  public static void main(String[] args) {
    LongStream.range(Long.parseLong(args[1]), Long.parseLong(args[2]))
        .parallel()
        .mapToObj(seed -> fault(seed, Path.of(args[0])))
        .filter(text -> !text.isEmpty())
        .forEachOrdered(System.out::println);
  }
}
