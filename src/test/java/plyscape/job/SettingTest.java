package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.job.yaml.Setting;

/** Settings from the command line over a job's file. */
class SettingTest {

  private static final String LEAST = "layup: layup.yaml\nterrain: {file: terrain.asc}\n";

  @TempDir Path folder;
  private JobFixture files;

  @BeforeEach
  void makeFiles() {
    files = new JobFixture(folder);
  }

  @Test
  void settings_goOverTheFile() {
    Job job =
        files.job(
            LEAST + "tools:\n  - {name: end mill 1.5, diameter: 1.5}\n",
            new Setting("panel.width", "100", "--width"),
            new Setting("terrain.plies", "[wood, oak]", "--plies"),
            new Setting("tools.end mill 1.5.feed", "900", "--set"),
            new Setting("tools.2.diameter", "6", "--set"),
            new Setting("panel.width", "120", "--width"));
    assertEquals(120, job.panel().widthMm());
    assertEquals(List.of(2, 3), job.terrain().plyNumbers());
    assertEquals(900, job.tools().get(0).feedMmPerMin());
    assertEquals("end mill 6", job.tools().get(1).name());
  }

  @Test
  void settings_meetTheSameChecks_andTheFaultNamesTheOption() {
    assertEquals(
        "--width: found \"wide\"; wanted a number, mm, 5 to 5000",
        files.jobFault(LEAST, new Setting("panel.width", "wide", "--width")));
    assertEquals(
        "--set panel.widht=3: unknown key \"widht\"; did you mean \"width\"? known are width,"
            + " height, border, tiles, top_map, turn",
        files.jobFault(LEAST, new Setting("panel.widht", "3", "--set panel.widht=3")));
    assertTrue(
        files
            .jobFault(LEAST, new Setting("layup.name", "3", "--set"))
            .contains("no keys under a single value"));
    assertTrue(
        files
            .jobFault(LEAST, new Setting("tools.5.feed", "3", "--set"))
            .contains("no entry \"5\""));
    assertTrue(
        files
            .jobFault(LEAST, new Setting("panel", "[", "--set"))
            .startsWith("--set: not valid YAML"));
    InputFault fault =
        assertThrows(
            InputFault.class,
            () ->
                JobReader.of(
                    folder.resolve("none.asc"),
                    folder.resolve("layup.yaml"),
                    List.of(),
                    files.warnings));
    assertTrue(fault.getMessage().startsWith("TERRAIN: no file"), fault.getMessage());
  }
}
