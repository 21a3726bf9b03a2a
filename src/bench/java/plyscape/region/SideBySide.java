package plyscape.region;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import plyscape.bands.Bands;
import plyscape.bench.Relief;
import plyscape.fault.Warnings;
import plyscape.grid.DistanceTransform;
import plyscape.terrain.Terrain;

/**
 * Our half of scripts/bench-side-by-side.sh: times the distance transform and the region polygons
 * of one made raster, and leaves the raster for the reference programs. Best of several runs in one
 * JVM, files neither read nor written inside.
 */
public final class SideBySide {

  private static final int SIDE = 4096;

  private SideBySide() {}

  /** Argument: the directory for the raster. */
  public static void main(String[] args) throws IOException {
    Path directory = Path.of(args[0]);
    double[] z = Relief.make(SIDE, SIDE, 1);
    boolean[] low = Relief.low(z);
    ByteBuffer cells = ByteBuffer.allocate(4 * z.length).order(ByteOrder.LITTLE_ENDIAN);
    byte[] mask = new byte[z.length];
    for (int i = 0; i < z.length; i++) {
      z[i] = (float) z[i];
      cells.putFloat((float) z[i]);
      mask[i] = (byte) (low[i] ? 0 : 1);
    }
    Files.write(directory.resolve("relief.f32"), cells.array());
    Files.write(directory.resolve("mask.u8"), mask);
    Terrain terrain = TilingBench.terrain(z, SIDE);
    Bands bands = TilingBench.bands(z);
    StringBuilder text = new StringBuilder();
    for (double level : bands.breaksM()) {
      text.append(level).append('\n');
    }
    Files.writeString(directory.resolve("breaks.txt"), text);

    time("distance transform", 12, () -> DistanceTransform.squared(low, SIDE, SIDE));
    time(
        "region polygons: contours only",
        8,
        () -> {
          ContourLattice lattice = ContourLattice.of(terrain.elevationM(), terrain.frame().panel());
          return ContourTracer.trace(lattice, terrain.frame().panel(), bands.breaksM());
        });
    Tiling tiling =
        time(
            "region polygons: exact tiling and nested pockets",
            8,
            () ->
                TilingBuilder.build(
                    terrain, bands, List.of(), new TilingRules(9, 0, 0, null), new Warnings()));
    int points = tiling.exposed().values().stream().mapToInt(g -> g.getNumPoints()).sum();
    System.out.printf(Locale.ROOT, "  (%d regions, %d points)%n", tiling.regions().size(), points);
  }

  private static <T> T time(String what, int runs, Supplier<T> work) {
    double best = Double.POSITIVE_INFINITY;
    T result = null;
    for (int i = 0; i < runs; i++) {
      long start = System.nanoTime();
      result = work.get();
      best = Math.min(best, (System.nanoTime() - start) / 1e9);
    }
    System.out.printf(Locale.ROOT, "plyscape  %-52s %7.3f s%n", what, best);
    return result;
  }
}
