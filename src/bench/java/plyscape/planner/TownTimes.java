package plyscape.planner;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.UtmZone;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.zones.Town;

/**
 * What a town costs up to the regions: 1000 roads and 1200 buildings over 130 x 130 cells of real
 * ground on 200 mm, nine plies, smallest cutter 1.5 mm. Run by scripts/bench-town.sh.
 */
public final class TownTimes {

  /** 130 cells of 60 m each way, in the middle of the Eildon sample. */
  private static final Box GROUND = new Box(515000, 6155000, 522800, 6162800);

  private static final UtmZone ZONE = new UtmZone(30, true);
  private static final int ROADS = 1000;
  private static final int BUILDINGS = 1200;

  /** Widths on the ground, m, of trunk, street, lane and path; a panel mm is 41 m. */
  private static final Map<String, int[]> WIDTHS =
      Map.of(
          "true", new int[] {18, 10, 6, 3},
          "drawn", new int[] {90, 70, 40, 25},
          "widened", new int[] {18, 10, 6, 3});

  private TownTimes() {}

  /**
   * Arguments: a folder for map and jobs, then which of true, drawn and widened (all if none);
   * {@code --write} only writes the files.
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    Files.createDirectories(folder);
    Files.writeString(
        folder.resolve("town.geojson"), Town.geoJson(ZONE, GROUND, ROADS, BUILDINGS, 1));
    List<String> rest = List.of(args).subList(1, args.length);
    for (String name : List.of("true", "drawn", "widened")) {
      Path job = folder.resolve(name + ".yaml");
      Files.writeString(job, yaml(name));
      boolean wanted = rest.stream().allMatch(a -> a.startsWith("--")) || rest.contains(name);
      if (wanted && !rest.contains("--write")) {
        for (int run = 0; run < 3; run++) {
          run(job, name + ", run " + (run + 1));
        }
      }
    }
  }

  private static String yaml(String name) {
    int[] widths = WIDTHS.get(name);
    Path samples = Path.of("samples").toAbsolutePath();
    StringBuilder zones = new StringBuilder();
    String[] kinds = {"path", "lane", "street", "trunk"};
    for (int i = 0; i < kinds.length; i++) {
      zones.append(
          String.format(
              Locale.ROOT,
              "  - {name: %s, file: town.geojson, where: {kind: %s}, %s, ground_width: %d%s}\n",
              kinds[i],
              kinds[i],
              i == 3 ? "ply: walnut" : "sink: 1",
              widths[3 - i],
              name.equals("widened") && i > 1 ? ", keep: widen" : ""));
    }
    return """
    layup: %s/tarn-hollow/layup.yaml
    terrain:
      file: %s/eildon/eildon_utm30_60m.tif
      crop: [515000, 6155000, 522800, 6162800]
      plies: [limestone, heather, meadow, barley, brick, wood]
      smoothing: 0.4
    panel: {width: 200, height: 200, border: 6}
    zones:
    %s  - {name: buildings, file: town.geojson, where: {kind: building}, ply: deep blue}
    tools:
      - {name: end mill 3, shape: flat, diameter: 3.0, flute_length: 12, flutes: 2, rpm: 16000, feed: 1800, plunge: 500, stepdown: 2.0, stepover: 0.45}
      - {name: end mill 1.5, shape: flat, diameter: 1.5, flute_length: 8, flutes: 2, rpm: 18000, feed: 1200, plunge: 300, stepdown: 1.0, stepover: 0.45}
    """
        .formatted(samples, samples, zones);
  }

  private static void run(Path file, String title) {
    Map<String, Double> seconds = new LinkedHashMap<>();
    // Of the thread that plans: on a busy machine it tells more than a clock on the wall.
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long[] since = {threads.getCurrentThreadCpuTime()};
    String[] stage = {"settings"};
    Warnings warnings = new Warnings();
    Job job = JobReader.read(file, List.of(), warnings);
    Progress clock =
        new Progress() {
          @Override
          public void stage(String name) {
            long now = threads.getCurrentThreadCpuTime();
            seconds.merge(stage[0], (now - since[0]) / 1e9, Double::sum);
            since[0] = now;
            stage[0] = name;
          }

          @Override
          public void done() {
            stage("");
          }
        };
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long begin = System.nanoTime();
    long cpu = system.getProcessCpuTime();
    PlanOptions preview = PlanOptions.preview(Set.of());
    Plan plan = Planner.plan(job, preview, clock, warnings);
    StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-16s", title));
    seconds.forEach((name, s) -> line.append(String.format(Locale.ROOT, " %s %.2f", name, s)));
    System.out.printf(
        Locale.ROOT,
        "%s; wall %.2f, all processors %.2f; %d regions, %d kinds merged, hash %08x%n",
        line,
        (System.nanoTime() - begin) / 1e9,
        (system.getProcessCpuTime() - cpu) / 1e9,
        plan.tiling().regions().size(),
        plan.tiling().merged().size(),
        (plan.tiling().regions().toString() + plan.tiling().merged()).hashCode());
  }
}
