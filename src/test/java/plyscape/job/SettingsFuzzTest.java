package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Fault;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;

/**
 * Seeded mutations of settings files: each is read, or refused with a message that names the file,
 * soon.
 */
class SettingsFuzzTest {

  private static final int TRIALS = 800;

  /** Small seeds in a row give like first numbers; this spreads them (golden ratio times 2^64). */
  private static final long SPREAD = 0x9E3779B97F4A7C15L;

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

  private static final List<String> TOKENS =
      List.of(
          "*a",
          "&a ",
          "{",
          "}",
          "[",
          "]",
          "\t",
          "!!int ",
          "!x ",
          "- ",
          ": ",
          "?",
          "|",
          ">",
          "%",
          "@",
          "---\n",
          "...\n",
          "1e400",
          "-0",
          ".inf",
          "0x10",
          "\0",
          "\u0085",
          "\ud83d\ude00",
          "'",
          "\"",
          "#",
          "\n",
          "\r",
          "<<: ",
          "null",
          "~",
          "9".repeat(400),
          "\ufeff",
          "\u2028",
          "a: &b [*b]\n",
          "../../../../etc/passwd",
          "/dev/null",
          "true",
          "\\",
          "${x}");

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
      byte[] bytes = mutate(original, new Random(seed * SPREAD));
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

  private static byte[] mutate(byte[] original, Random random) {
    byte[] bytes = original.clone();
    int changes = 1 + random.nextInt(2);
    for (int i = 0; i < changes; i++) {
      int at = random.nextInt(bytes.length + 1);
      int end = Math.min(bytes.length, at + random.nextInt(12));
      byte[] put =
          switch (random.nextInt(5)) {
            case 0 -> new byte[] {(byte) random.nextInt(256)};
            case 1 -> new byte[0];
            case 2 -> {
              int from = random.nextInt(bytes.length + 1);
              yield Arrays.copyOfRange(
                  bytes, from, Math.min(bytes.length, from + random.nextInt(80)));
            }
            default -> TOKENS.get(random.nextInt(TOKENS.size())).getBytes(StandardCharsets.UTF_8);
          };
      bytes = splice(bytes, at, random.nextBoolean() ? at : end, put);
    }
    return bytes;
  }

  private static byte[] splice(byte[] bytes, int from, int to, byte[] put) {
    byte[] out = new byte[bytes.length - (to - from) + put.length];
    System.arraycopy(bytes, 0, out, 0, from);
    System.arraycopy(put, 0, out, from, put.length);
    System.arraycopy(bytes, to, out, from + put.length, bytes.length - to);
    return out;
  }
}
