package plyscape.region;

import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import plyscape.bands.Bands;
import plyscape.bench.Relief;
import plyscape.fault.Warnings;
import plyscape.terrain.Terrain;

/**
 * How the region stage grows with the cells that it is given, nothing thinned: made ground in nine
 * plies on 400 mm, cutter 1.5 mm. Processor time, as clocks on the wall mean little on a busy
 * machine. Run by scripts/bench-growth.sh.
 */
public final class RegionGrowth {

  private RegionGrowth() {}

  /** Arguments: cells along a side (1000 2000 4000 8000 if none). */
  public static void main(String[] args) {
    List<String> sides = args.length > 0 ? List.of(args) : List.of("1000", "2000", "4000", "8000");
    System.out.printf(
        Locale.ROOT,
        "%8s %12s %12s %9s %9s%n",
        "Mcell",
        "processor s",
        "ns a cell",
        "regions",
        "points");
    run(1000, false);
    for (String side : sides) {
      run(Integer.parseInt(side), true);
    }
  }

  private static void run(int side, boolean told) {
    double[] z = Relief.make(side, side, 1);
    Terrain terrain = TilingBench.terrain(z, side);
    Bands bands = TilingBench.bands(z);
    double start = processorS();
    Tiling tiling =
        TilingBuilder.build(
            terrain, bands, List.of(), new TilingRules(9, 1.5, 1, null), new Warnings());
    double seconds = processorS() - start;
    if (told) {
      System.out.printf(
          Locale.ROOT,
          "%8.0f %12.2f %12.0f %9d %9d%n",
          side / 1e3 * side / 1e3,
          seconds,
          seconds * 1e9 / side / side,
          tiling.regions().size(),
          tiling.exposed().values().stream().mapToInt(g -> g.getNumPoints()).sum());
    }
  }

  private static double processorS() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
            .getProcessCpuTime()
        / 1e9;
  }
}
