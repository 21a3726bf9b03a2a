package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Any job that the reader accepts is planned: none is refused for what was planned itself, and no
 * move plunges or bites more than its cutter may, by the simulator from the text of the programs.
 */
class OddJobsTest {

  private static final int JOBS = 40;

  /**
   * Where faults were found: a ring that left out what nodes don't see at its wall (283, 297), a
   * cut down a wall that began too deep (661, 887), a slot that ended short of wood beside its last
   * section (1633), depths that grew over a stepdown by rounding (169, 273, 1187).
   */
  private static final long[] FOUND = {283, 297, 661, 887, 1633, 169, 273, 1187};

  @Test
  void oddJobs_arePlanned_andKeepToPlungeAndStepdown(@TempDir Path folder) {
    assertEquals(
        List.of(),
        RandomJob.faults(
            LongStream.concat(LongStream.range(0, JOBS), LongStream.of(FOUND))
                .mapToObj(OddJob::new),
            folder));
  }
}
