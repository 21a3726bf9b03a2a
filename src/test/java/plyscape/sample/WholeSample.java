package plyscape.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import plyscape.cli.Run;
import plyscape.gcode.GcodeParser;
import plyscape.job.Job;
import plyscape.machine.Tool;
import plyscape.simulate.Cut;

/** samples/tarn-hollow/job.yaml, planned whole as a user would, once for all tests. */
public final class WholeSample {

  private static Path planned;

  private WholeSample() {}

  /** The output; not to be changed. */
  public static synchronized Path out() throws IOException {
    if (planned == null) {
      Path folder = Files.createTempDirectory("whole-sample");
      Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(folder)));
      Run run = Run.of("plan", "samples/tarn-hollow/job.yaml", "-o", folder.resolve("out"));
      assertEquals(0, run.code(), run.err());
      planned = folder.resolve("out");
    }
    return planned;
  }

  /** Its programs, as a panel of a thickness takes them. */
  public static List<Cut> cuts(Job job, double thicknessMm) throws IOException {
    List<Cut> cuts = new ArrayList<>();
    for (Path file : sorted(out().resolve("passes"))) {
      String text = Files.readString(file);
      Tool tool =
          job.tools().stream()
              .filter(t -> text.contains("tool: " + t.name() + ","))
              .findFirst()
              .orElseThrow();
      double width = job.panel().widthMm();
      double height = job.panel().heightMm();
      cuts.add(
          new Cut(
              GcodeParser.parse(file.toString(), text, job.machine(), width, height, thicknessMm),
              tool));
    }
    return cuts;
  }

  /** Files of a directory by name. */
  public static List<Path> sorted(Path directory) throws IOException {
    try (Stream<Path> list = Files.list(directory)) {
      return list.sorted().toList();
    }
  }

  private static void delete(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      all.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
    } catch (IOException e) {
      System.err.println(e);
    }
  }
}
