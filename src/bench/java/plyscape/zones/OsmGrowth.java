package plyscape.zones;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.LineWidth;
import plyscape.job.MapPick;
import plyscape.job.ZoneSpec;

/**
 * Reads extracts of growing size for a panel of 10 km, and says how long it took and how much
 * memory; the largest is to be run with {@code -Xmx2g}. Arguments: a folder, then sizes in MB.
 */
final class OsmGrowth {

  private static final GroundFrame PANEL =
      new GroundFrame(
          "EPSG:32632", new Box(600000, 5500000, 610000, 5510000), new Box(5, 5, 205, 205), 1);

  private OsmGrowth() {}

  /** Runs it. */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    for (int i = 1; i < args.length; i++) {
      Path file = folder.resolve("country-" + args[i] + ".osm.pbf");
      if (!Files.exists(file)) {
        OsmCountry.write(file, Long.parseLong(args[i]) * 1_000_000);
      }
      read(file);
    }
  }

  private static void read(Path file) throws IOException {
    System.gc();
    List<MemoryPoolMXBean> pools =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .toList();
    pools.forEach(MemoryPoolMXBean::resetPeakUsage);
    long start = System.nanoTime();
    ZoneSpec spec =
        new ZoneSpec(
            "all",
            new MapPick(file, "", new TreeMap<>()),
            2,
            null,
            new LineWidth(0.5, null, null),
            null,
            ZoneSpec.Keep.MERGE);
    Zone zone = ZoneReader.read(List.of(spec), PANEL, new Warnings()).get(0);
    System.out.printf(
        Locale.ROOT,
        "%s: %.0f MB, %d features on the panel, %d left out, %.1f s, peak of the heap %.0f MB%n",
        file.getFileName(),
        Files.size(file) / 1e6,
        zone.features(),
        zone.skipped().size(),
        (System.nanoTime() - start) / 1e9,
        pools.stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() / 1e6);
  }
}
