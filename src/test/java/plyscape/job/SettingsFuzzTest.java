package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Fault;
import plyscape.fault.InputFault;
import plyscape.fault.Mutant;
import plyscape.fault.Warnings;
import plyscape.job.yaml.YamlNode;
import plyscape.job.yaml.YamlText;

/**
 * Seeded mutations of settings files: each is read, or refused with a message that names the file,
 * soon.
 */
class SettingsFuzzTest {

  private static final int TRIALS = 800;

  private static final long LIMIT_NANOS = 5_000_000_000L;

  private static final String JOB =
      """
      layup: layup.yaml
      terrain:
        file: terrain.asc
        crop: [412000, 5601000, 415000, 5604000]
        plies: [meadow, wood, oak]
        bands: [310.5, 260]
        smoothing: 0.4
      panel: {width: 240, height: 240, border: 6}
      zones:
        - {name: river, file: zones.geojson, where: {kind: river}, ply: deep blue, ground_width: 12}
      tools:
        - {name: end mill 3, shape: flat, diameter: 3.0, flute_length: 12, flutes: 2, rpm: 16000}
      machine: {travel: [300, 300, 80], rapid: 4000, zero: lower-left}
      top: leave
      """;

  @TempDir Path folder;
  private JobFixture files;

  @BeforeEach
  void makeFiles() {
    files = new JobFixture(folder);
  }

  @Test
  void layups_areReadOrRefused() {
    String seed =
        "glue_line: 0.04\nmeasured_bottoms: {wood: 1.7}\nmeasured_thickness: 3.6\n"
            + JobFixture.LAYUP;
    fuzz("mutant.yaml", seed, LayupReader::layup);
  }

  @Test
  void jobs_areReadOrRefused() {
    fuzz("mutant.yaml", JOB, (file, tree) -> JobReader.job(file, tree, List.of(), new Warnings()));
  }

  private void fuzz(String name, String seedText, BiConsumer<Path, YamlNode> reader) {
    byte[] original = seedText.getBytes(StandardCharsets.UTF_8);
    Path file =
        folder.resolve(
            name); // the bytes don't go through the file system: that would take most of the time
    int read = 0;
    for (int seed = 0; seed < TRIALS; seed++) {
      byte[] bytes = Mutant.of(original, seed);
      long start = System.nanoTime();
      try {
        reader.accept(file, YamlText.read(file, bytes));
        read++;
      } catch (Fault fault) {
        String message = fault.getMessage();
        boolean placed =
            fault instanceof InputFault
                && (message.contains(name) || message.contains("layup.yaml"));
        assertTrue(placed, "seed " + seed + ": " + message);
      } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
        throw new AssertionError("seed " + seed, e);
      }
      assertTrue(System.nanoTime() - start < LIMIT_NANOS, "seed " + seed + " took too long");
    }
    assertTrue(
        read > TRIALS / 50 && read < TRIALS,
        read + " of " + TRIALS + " were read: mutations too weak or too strong");
  }
}
