package plyscape.planner;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import plyscape.bench.BigTiff;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.job.yaml.Setting;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;

/**
 * How the time of reading a terrain grows with the cells of the crop, on a GeoTIFF of 20 000 x 20
 * 000 float32 cells, and what a whole plan of it takes. Run by scripts/bench-windows.sh with 2 GB
 * of heap.
 */
public final class BigRaster {

  private static final int SIDE = 20_000;
  private static final double SMALLEST_TOOL_MM = 1.5;

  private BigRaster() {}

  /** Argument: a folder for the raster of about 1 GB; it is written once and kept. */
  public static void main(String[] args) throws IOException {
    Path file = Path.of(args[0]).resolve("hills-20000.tif");
    if (!Files.exists(file)) {
      long start = System.nanoTime();
      BigTiff.write(file, SIDE, 1, BigTiff.hills(SIDE));
      print(
          "written %d x %d cells, %.0f MB, in %.1f s%n",
          SIDE, SIDE, Files.size(file) / 1e6, since(start));
    }
    print(
        "%8s %9s %13s %10s %9s %12s%n",
        "Mcell", "seconds", "of processor", "ns a cell", "grid", "heap in use");
    read(file, 1000);
    for (int side : new int[] {1000, 2000, 4000, 8000, SIDE}) {
      read(file, side);
    }
    long start = System.nanoTime();
    Warnings warnings = new Warnings();
    PanelPlan plan =
        (PanelPlan)
            Planner.plan(
                job(file, SIDE, warnings),
                new PlanOptions(false, false, Set.of(), PlanOptions.USUAL_CELL_MM),
                stage -> {},
                warnings);
    print(
        "whole plan of %d Mcell: %.1f s, matched share %.5f%n",
        SIDE / 1000 * SIDE / 1000, since(start), plan.verification().matchedShare());
  }

  private static Job job(Path file, int side, Warnings warnings) {
    String crop = "[400000, " + (5600000 - side) + ", " + (400000 + side) + ", 5600000]";
    return JobReader.read(
        Path.of("samples/tarn-hollow/job.yaml"),
        List.of(
            set("terrain.file", file.toAbsolutePath().toString()),
            set("terrain.crop", crop),
            set("zones", "[]")),
        warnings);
  }

  private static Setting set(String key, String value) {
    return new Setting(key, value, "--set " + key);
  }

  private static void read(Path file, int side) {
    Warnings warnings = new Warnings();
    Job job = job(file, side, warnings);
    long start = System.nanoTime();
    long cpuStart = cpuNanos();
    Terrain terrain = TerrainReader.read(job.terrain(), job.panel(), SMALLEST_TOOL_MM, warnings);
    double seconds = since(start);
    double cpu = (cpuNanos() - cpuStart) / 1e9;
    Runtime runtime = Runtime.getRuntime();
    int columns = terrain.elevationM().frame().columns();
    print(
        "%8.0f %9.2f %13.2f %10.1f %9s %9d MB%n",
        side * (double) side / 1e6,
        seconds,
        cpu,
        cpu * 1e9 / side / side,
        columns + "^2",
        (runtime.totalMemory() - runtime.freeMemory()) >> 20);
  }

  /** Time of all threads, which a busy machine doesn't stretch. */
  private static long cpuNanos() {
    return ManagementFactory.getPlatformMXBean(com.sun.management.OperatingSystemMXBean.class)
        .getProcessCpuTime();
  }

  private static double since(long start) {
    return (System.nanoTime() - start) / 1e9;
  }

  private static void print(String format, Object... values) {
    System.out.printf(Locale.ROOT, format, values);
  }
}
