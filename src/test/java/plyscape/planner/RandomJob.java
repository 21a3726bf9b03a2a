package plyscape.planner;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.simulate.Verification;

/** A small job from a seed, and what is wrong with its plan. */
public abstract class RandomJob {

  /** Up to four cells of the simulation: the cut is planned on a lattice no finer than they are. */
  private static final double CELLS_MM2 = 0.045;

  final Random random;
  final long seed;

  RandomJob(long seed, Random random) {
    this.seed = seed;
    this.random = random;
  }

  /** Its files by name, the job's own and the layup's among them. */
  abstract Map<String, String> files();

  /** Writes the job's files into a folder and reads it. */
  public final Job in(Path folder) {
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, String> file : files().entrySet()) {
        Files.writeString(folder.resolve(file.getKey()), file.getValue());
      }
      return JobReader.read(folder.resolve("job.yaml"), List.of(), new Warnings());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  final double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  /** Plies of odd thicknesses over a thick one. */
  final String layup(int plies, int shade) {
    StringBuilder yaml = new StringBuilder("name: seed " + seed + "\nglue_line: 0.04\nplies:\n");
    for (int p = 1; p <= plies; p++) {
      double thickness = p == plies ? 3 : between(0.5, 1.5);
      yaml.append(
          text(
              "  - {name: ply %d, colour: \"#%02x8040\", thickness: %.3f}\n",
              p, shade * p, thickness));
    }
    return yaml.toString();
  }

  /** What is wrong with the plan of the job, or nothing. */
  final String fault(Path folder, double cellMm) {
    String where = "seed " + seed + ": ";
    try {
      PanelPlan plan =
          (PanelPlan)
              Planner.plan(
                  in(folder.resolve("job-" + seed)),
                  new PlanOptions(false, false, Set.of(), cellMm),
                  Progress.NONE,
                  new Warnings());
      Verification v = plan.verification();
      return plan.programs().isEmpty()
              || v.gougedMm2() > 0
              || !v.collisions().isEmpty()
              || v.uncutMm2() > CELLS_MM2
              || v.biteMaxShare() > 1.001
          ? where + v
          : "";
    } catch (RuntimeException e) {
      return where + e;
    }
  }

  /** What is wrong with the plans of several jobs. */
  static List<String> faults(Stream<? extends RandomJob> jobs, Path folder) {
    return jobs.parallel()
        .map(job -> job.fault(folder, PlanOptions.USUAL_CELL_MM))
        .filter(text -> !text.isEmpty())
        .toList();
  }

  /** Tries seeds by hand: odd or seeded, a folder, the first, the end, the cell. */
  public static void main(String[] args) {
    LongStream.range(Long.parseLong(args[2]), Long.parseLong(args[3]))
        .parallel()
        .mapToObj(seed -> args[0].equals("odd") ? new OddJob(seed) : new SeededJob(seed))
        .map(job -> job.fault(Path.of(args[1]), Double.parseDouble(args[4])))
        .filter(text -> !text.isEmpty())
        .forEachOrdered(System.out::println);
  }
}
