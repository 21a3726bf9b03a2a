package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What holds for every panel (src/contract.md, section 9), on 200 small jobs from seeds, by the
 * simulator from the text of the programs: no wood gouged, no rapid through stock, no move out of
 * the machine's travel, all that a cutter can reach cut. The cutter lists are odd on purpose: one
 * cutter, short flutes, strokes nearly as wide as the cutter or very shallow, a cutter that fits
 * nowhere.
 */
class SeededJobsTest {

  private static final int JOBS = 200;

  @Test
  void seededJobs_noGougeNoCollisionAllReachableCut(@TempDir Path folder) {
    assertEquals(
        List.of(), RandomJob.faults(LongStream.range(0, JOBS).mapToObj(SeededJob::new), folder));
  }
}
