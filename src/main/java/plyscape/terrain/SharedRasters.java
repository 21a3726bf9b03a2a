package plyscape.terrain;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.files.InputCache;
import plyscape.job.FilesBeside;
import plyscape.job.TerrainOptions;
import plyscape.terrain.raster.Raster;

/** Rasters of formats that are read as a whole, which several jobs of a batch may use. */
final class SharedRasters {

  /** A raster, and what its reader warned of. */
  private record Opened(Raster raster, List<Warning> warnings) {}

  private SharedRasters() {}

  /** The raster as it was read before, or read now. */
  static Raster open(
      Path file,
      TerrainOptions.RasterSpec spec,
      Warnings warnings,
      Function<Warnings, Raster> read) {
    List<Path> files = new ArrayList<>(List.of(file));
    files.addAll(new FilesBeside().of(file));
    Opened opened =
        InputCache.of(files)
            .get(
                "raster " + spec.encoding() + " " + spec.cellM(),
                () -> {
                  Warnings own = new Warnings();
                  return new Opened(read.apply(own), own.list());
                },
                one -> (long) Double.BYTES * one.raster().columns() * one.raster().rows());
    warnings.addAll(opened.warnings());
    return opened.raster();
  }
}
