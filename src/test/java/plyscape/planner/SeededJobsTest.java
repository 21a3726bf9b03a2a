package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.simulate.Verification;

/**
 * What holds for every panel (src/contract.md, section 9), on 200 small jobs from seeds, by the
 * simulator from the text of the programs: no wood gouged, no rapid through stock, no move out of
 * the machine's travel, all that a cutter can reach cut. The cutter lists are odd on purpose: one
 * cutter, short flutes, strokes nearly as wide as the cutter or very shallow, a cutter that fits
 * nowhere.
 */
class SeededJobsTest {

  private static final int JOBS = 200;

  /** Up to four cells of the simulation: the cut is planned on a lattice no finer than they are. */
  private static final double CELLS_MM2 = 0.045;

  @Test
  void seededJobs_noGougeNoCollisionAllReachableCut(@TempDir Path folder) {
    List<String> faults =
        LongStream.range(0, JOBS)
            .parallel()
            .mapToObj(seed -> fault(seed, folder, 0.1))
            .filter(text -> !text.isEmpty())
            .toList();
    assertEquals(List.of(), faults);
  }

  /** What is wrong with the plan of a seed's job, or nothing. */
  static String fault(long seed, Path folder, double cellMm) {
    String where = "seed " + seed + ": ";
    try {
      PanelPlan plan =
          (PanelPlan)
              Planner.plan(
                  new SeededJob(seed).in(folder.resolve("job-" + seed)),
                  new PlanOptions(false, false, Set.of(), cellMm),
                  Progress.NONE,
                  new Warnings());
      Verification v = plan.verification();
      if (plan.programs().isEmpty()) {
        return where + "nothing is cut";
      }
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

  /** Tries seeds by hand: a folder, the first, the end, the cell. */
  public static void main(String[] args) {
    LongStream.range(Long.parseLong(args[1]), Long.parseLong(args[2]))
        .parallel()
        .mapToObj(seed -> fault(seed, Path.of(args[0]), Double.parseDouble(args[3])))
        .filter(text -> !text.isEmpty())
        .forEachOrdered(System.out::println);
  }
}
