package plyscape.cli.job;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import plyscape.bench.Growth;
import plyscape.fault.Warnings;
import plyscape.output.OutputKind;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;

/**
 * How whole jobs grow with the cells of their terrain, stage by stage, from the job file to the
 * written output: 1, 4, 16 and 64 million cells of made ground with two zones and two cutters, once
 * with the panel as it is and once with a panel that grows with the cells. Run by
 * scripts/bench-growth.sh.
 *
 * <p>The smallest job of each table is run a few times before anything is told, so that its row
 * doesn't hold Java's start; then each job is run twice, and each stage's lesser time is taken.
 */
public final class JobGrowth {

  private static final int WARM_UPS = 3;
  private static final int RUNS = 2;

  /** Panels a side. */
  private static final List<Integer> WALLS = List.of(1, 2, 5, 10);

  /** The processor clock ticks every 0.01 s: of less than this no exponent can be told. */
  private static final double LEAST_S = 0.03;

  private final GrowthJob jobs;
  private final Path out;
  private final List<Integer> sides;

  private interface JobFile {
    Path of(int side) throws IOException;
  }

  /** Seconds of a stage: by the clock, and of all processors together. */
  private record Seconds(double wall, double processor) {

    Seconds plus(Seconds other) {
      return new Seconds(wall + other.wall, processor + other.processor);
    }

    Seconds lesser(Seconds other) {
      return new Seconds(Math.min(wall, other.wall), Math.min(processor, other.processor));
    }
  }

  private JobGrowth(Path folder, List<Integer> sides) {
    this.jobs = new GrowthJob(folder);
    this.out = folder.resolve("out");
    this.sides = sides;
  }

  /**
   * Arguments: a folder for rasters, jobs and output, then cells along a side (1000 2000 4000 8000
   * if none), or {@code --walls} for several panels alone.
   */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    if (args.length > 1 && args[1].equals("--walls")) {
      new JobGrowth(folder, WALLS).walls();
      return;
    }
    List<Integer> sides =
        args.length > 1
            ? Stream.of(args).skip(1).map(Integer::valueOf).toList()
            : List.of(1000, 2000, 4000, 8000);
    JobGrowth growth = new JobGrowth(folder, sides);
    growth.table("The same ground on 240 x 240 mm in ever finer cells", growth.jobs::finer);
    growth.table("A panel that grows with the cells, 0.06 mm each", growth.jobs::wider);
    new JobGrowth(folder, WALLS).walls();
  }

  private void table(String title, JobFile file) throws IOException {
    for (int run = 0; run < WARM_UPS; run++) {
      run(file.of(sides.get(0)));
    }
    List<Map<String, Seconds>> columns = new ArrayList<>();
    for (int side : sides) {
      Path job = file.of(side);
      Map<String, Seconds> best = run(job);
      for (int run = 1; run < RUNS; run++) {
        run(job).forEach((stage, s) -> best.merge(stage, s, Seconds::lesser));
      }
      best.values().stream().reduce(Seconds::plus).ifPresent(sum -> best.put("sum", sum));
      columns.add(best);
    }
    print("%n%s; seconds by the clock and of all processors%n%-12s", title, "Mcell");
    sides.forEach(side -> print(" %15.0f", (double) side * side / 1e6));
    print("  growth  last step%n");
    for (String stage : columns.get(0).keySet()) {
      List<Seconds> row = columns.stream().map(column -> column.get(stage)).toList();
      print("%-12s", stage);
      row.forEach(s -> print(" %7.2f %7.2f", s.wall(), s.processor()));
      print("%s%n", exponents(row));
    }
  }

  /** Walls of panels of one size: what a panel takes, and what is held between two of them. */
  private void walls() throws IOException {
    print("%nWalls of panels of 48 x 48 mm; seconds of all processors and heap held%n");
    print("%8s %10s %10s %12s %8s%n", "panels", "sum s", "s a panel", "held MB", "growth");
    for (int run = 0; run < WARM_UPS; run++) {
      run(jobs.wall(sides.get(1)));
    }
    double[] panels = sides.stream().mapToDouble(side -> (double) side * side).toArray();
    double[] times = new double[panels.length];
    for (int i = 0; i < panels.length; i++) {
      StageClock clock = clocked(jobs.wall(sides.get(i)));
      times[i] = clock.seconds.values().stream().mapToDouble(Seconds::processor).sum();
      String growth = i == 0 ? "" : String.format(Locale.ROOT, "%8.2f", step(panels, times, i));
      print("%8.0f %10.2f %10.3f", panels[i], times[i], times[i] / panels[i]);
      print(" %12.1f %s%n", clock.heldBytes / 1e6, growth);
    }
  }

  /** The power of the size with which the time went from the row before to this one. */
  private static double step(double[] sizes, double[] times, int i) {
    return Math.log(times[i] / times[i - 1]) / Math.log(sizes[i] / sizes[i - 1]);
  }

  /** Of processor time; nothing for what is too short to tell, or for a single size. */
  private String exponents(List<Seconds> row) {
    double[] times = row.stream().mapToDouble(Seconds::processor).toArray();
    if (times.length < 2 || row.stream().anyMatch(s -> s.processor() < LEAST_S)) {
      return "       -          -";
    }
    double[] cells = sides.stream().mapToDouble(side -> (double) side * side).toArray();
    return String.format(
        Locale.ROOT, " %7.2f %10.2f", Growth.exponent(cells, times), Growth.last(cells, times));
  }

  /** One run of a job from its file to its output, a time a stage. */
  private Map<String, Seconds> run(Path file) {
    return clocked(file).seconds;
  }

  private StageClock clocked(Path file) {
    System.gc(); // what the run before left isn't this one's
    StageClock clock = new StageClock();
    JobInputs.Source source =
        new JobInputs.FileSource(file.getFileName().toString(), file, List.of());
    JobRun.Target target =
        new JobRun.Target(out, OutputKind.PLAN, true, false, JobRun.Reuse.NOTHING);
    Stages stages = new TiledStages(new PlanStages());
    new JobRun(
            stages,
            source,
            new PlanOptions(false, false, Set.of(), PlanOptions.USUAL_CELL_MM),
            target)
        .run(clock, new Warnings());
    return clock;
  }

  /** Times of stages, each until the next begins or the run is done. */
  private static final class StageClock implements Progress {

    private final OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private final Map<String, Seconds> seconds = new LinkedHashMap<>();
    private long heldBytes;
    private String running = "";
    private long wallSince;
    private long processorSince;

    @Override
    public void stage(String name) {
      long wall = System.nanoTime();
      long processor = system.getProcessCpuTime();
      if (!running.isEmpty()) {
        Seconds spent = new Seconds((wall - wallSince) / 1e9, (processor - processorSince) / 1e9);
        seconds.merge(running, spent, Seconds::plus);
      }
      running = name;
      wallSince = wall;
      processorSince = processor;
    }

    /** What is held between panels; clearing up isn't counted. */
    @Override
    public void panel(String name, int number, int of) {
      stage("");
      System.gc();
      Runtime java = Runtime.getRuntime();
      heldBytes = Math.max(heldBytes, java.totalMemory() - java.freeMemory());
      stage("regions");
    }

    @Override
    public void done() {
      stage("");
    }
  }

  private static void print(String format, Object... values) {
    System.out.printf(Locale.ROOT, format, values);
  }
}
