package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.OperatingSystemMXBean;
import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import plyscape.fault.Mutant;

/**
 * Every reader through the commands that use it: whatever is changed in a file, the outcome is done
 * (0), can't be done (1), or bad input (2) with a file named; 3 from {@code verify}. Never a fault
 * of the program's own, never all of the memory, never long.
 *
 * <p>{@code mvn test -Dtest=ReaderFuzzTest -Dfuzz.trials=5000 -Dfuzz.first=1000} tries more; {@code
 * -Dfuzz.keep=DIR} keeps what broke.
 */
class ReaderFuzzTest {

  private static final int TRIALS = Integer.getInteger("fuzz.trials", 12);
  private static final long FIRST = Long.getLong("fuzz.first", 1);
  private static final String KEEP = System.getProperty("fuzz.keep", "");

  /** Processor time, all threads; a panel of 20 x 20 mm takes some hundredths of a second. */
  private static final double MOST_S = 20;

  /** All files are under 3 MB, most under 2 kB. */
  private static final long MOST_BYTES = 1L << 30;

  @TempDir static Path folder;
  private static FuzzSeeds seeds;

  /** Outcomes by reader, printed at the end of a long run. */
  private static final TreeMap<String, int[]> OUTCOMES = new TreeMap<>();

  @BeforeAll
  static void makeSeeds() throws Exception {
    seeds = new FuzzSeeds(folder);
  }

  @AfterAll
  static void outcomes() {
    if (TRIALS > 1000) {
      OUTCOMES.forEach((name, n) -> System.out.println(name + " " + Arrays.toString(n)));
    }
  }

  static Stream<FuzzSeeds.Reader> readers() {
    String only = System.getProperty("fuzz.only", "");
    return FuzzSeeds.READERS.stream().filter(reader -> reader.name().contains(only));
  }

  @ParameterizedTest
  @MethodSource("readers")
  void readsOrRefuses(FuzzSeeds.Reader reader) throws IOException {
    Path file = folder.resolve(reader.file());
    byte[] whole = Files.readAllBytes(file);
    Run unchanged = Run.of(seeds.args(reader));
    assertEquals(0, unchanged.code(), reader.name() + " as it is: " + unchanged.err());
    int[] outcomes = OUTCOMES.computeIfAbsent(reader.name(), name -> new int[4]);
    int trials = (int) Math.max(1, Math.round(TRIALS * reader.share()));
    try {
      for (long seed = FIRST; seed < FIRST + trials; seed++) {
        byte[] mutant = Mutant.of(whole, seed);
        Files.write(file, mutant);
        try {
          outcomes[trial(reader, seed)]++;
        } catch (AssertionError | RuntimeException e) {
          if (KEEP.isEmpty()) {
            throw e;
          }
          String name = reader.name() + "-" + seed;
          Files.write(Path.of(KEEP, name + "-" + file.getFileName()), mutant);
          Files.writeString(Path.of(KEEP, name + ".txt"), e.toString());
        }
      }
    } finally {
      Files.write(file, whole);
    }
  }

  /** What once broke a reader: files named by the reader and what is wrong with them. */
  @Test
  void whatBrokeOnce_isReadOrRefused() throws IOException {
    try (Stream<Path> found = Files.list(Path.of("src/test/resources/plyscape/fuzz"))) {
      for (Path broken : found.sorted().toList()) {
        String name = broken.getFileName().toString().replaceAll("\\..*", "");
        FuzzSeeds.Reader reader =
            FuzzSeeds.READERS.stream().filter(r -> r.name().equals(name)).findFirst().orElseThrow();
        Path file = folder.resolve(reader.file());
        byte[] whole = Files.readAllBytes(file);
        try {
          Files.copy(broken, file, StandardCopyOption.REPLACE_EXISTING);
          trial(reader, 0);
        } finally {
          Files.write(file, whole);
        }
      }
    }
  }

  private static int trial(FuzzSeeds.Reader reader, long seed) {
    ThreadMXBean memory = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    long bytes = memory.getThreadAllocatedBytes(thread);
    var process = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long start = process.getProcessCpuTime();
    Run run = Run.of(seeds.args(reader));
    double seconds = (process.getProcessCpuTime() - start) / 1e9;
    bytes = memory.getThreadAllocatedBytes(thread) - bytes;
    String what = reader.name() + ", seed " + seed + ", exit " + run.code() + ": " + run.err();
    String command = seeds.args(reader)[0].toString();
    boolean simulates = command.equals("verify") || command.equals("resume");
    assertTrue(List.of(0, 1, 2, simulates ? 3 : 0).contains(run.code()), what);
    assertFalse(run.err().contains("of memory that it may use"), what);
    boolean named = seeds.names().stream().anyMatch(run.err()::contains);
    assertTrue(run.code() != 2 || named, what);
    assertTrue(run.code() == 0 || run.code() == 3 || !run.err().isBlank(), what);
    assertFalse(
        (run.out() + run.err())
            .chars()
            .anyMatch(c -> c < 32 && c != '\n' || c == 127 || c == 0x202e),
        "control characters from " + what);
    assertTrue(seconds < MOST_S, seconds + " s for " + what);
    assertTrue(bytes < MOST_BYTES, bytes / 1e6 + " MB for " + what);
    return run.code();
  }
}
