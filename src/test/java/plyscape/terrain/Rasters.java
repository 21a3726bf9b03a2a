package plyscape.terrain;

import java.nio.file.Path;
import plyscape.fault.Warnings;
import plyscape.job.TerrainOptions;
import plyscape.terrain.raster.Raster;

/** Rasters of which nothing is known but what they say themselves. */
public final class Rasters {

  private Rasters() {}

  /** Opens a file. */
  public static Raster open(Path file, Warnings warnings) {
    return RasterOpener.open(file, TerrainOptions.RasterSpec.AS_IT_SAYS, warnings);
  }
}
