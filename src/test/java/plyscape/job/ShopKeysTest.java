package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/** Machine and tools of a job: what isn't given, what is out of range. */
class ShopKeysTest {

  private static final String LEAST = "layup: layup.yaml\nterrain: {file: terrain.asc}\n";

  @TempDir Path folder;
  private JobFixture files;

  @BeforeEach
  void makeFiles() {
    files = new JobFixture(folder);
  }

  @Test
  void spinUpAndLeastChip_areRead() {
    Machine machine = files.job(LEAST + "machine: {spin_up: 8, least_chip: 0.03}\n").machine();
    assertEquals(8, machine.spinUpS());
    assertEquals(0.03, machine.leastChipMm());
    assertEquals(60, machine.toolChangeS(), "the others stay as they are");
  }

  @Test
  void spinUpAndLeastChip_outOfRange() {
    assertTrue(
        files
            .jobFault(LEAST + "machine: {spin_up: -1}\n")
            .startsWith(
                "job.yaml:3:20: machine.spin_up: found -1; out of the sane range: wanted a number,"
                    + " s, 0 to 120"));
    assertTrue(
        files.jobFault(LEAST + "machine: {spin_up: soon}\n").contains("found \"soon\"; wanted"));
    assertTrue(
        files
            .jobFault(LEAST + "machine: {least_chip: 2}\n")
            .contains("wanted a number, mm a tooth, 0 to 1"));
  }

  @Test
  void thinFeed_absentIsTheFeed() {
    Tool tool = files.job(LEAST + "tools: [{feed: 900}]\n").tools().get(0);
    assertEquals(900, tool.thinFeedMmPerMin());
    assertEquals(0, tool.cutting().thinFeedMmPerMin());
  }

  @Test
  void thinFeed_isReadAndNeverUnderTheFeed() {
    Tool tool = files.job(LEAST + "tools: [{feed: 900, thin_feed: 2400}]\n").tools().get(0);
    assertEquals(2400, tool.thinFeedMmPerMin());
    assertEquals(900, tool.feedMmPerMin());
    assertTrue(
        files
            .jobFault(LEAST + "tools: [{feed: 900, thin_feed: 800}]\n")
            .startsWith("job.yaml:3:32: tools.1.thin_feed: a feed of 800.0 mm/min for thin bites"));
    assertTrue(files.jobFault(LEAST + "tools: [{thin_feed: 1}]\n").contains("mm/min, 10 to 50000"));
  }
}
