package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import plyscape.grid.Box;

/**
 * Which terrain, and how it is read and cut to size. Immutable.
 *
 * @param file resolved path of the raster, the first of a mosaic
 * @param crop box in {@code cropCrs}, or null for the whole
 * @param cropCrs authority code, or "" for the raster's own
 * @param plyNumbers plies the terrain may take, in layup order, at least one
 * @param bands how elevation becomes ply
 * @param smoothingMm Gaussian sigma on the panel, 0 for none
 * @param options everything else
 */
public record TerrainSpec(
    Path file,
    Box crop,
    String cropCrs,
    List<Integer> plyNumbers,
    BandSpec bands,
    double smoothingMm,
    TerrainOptions options) {

  /** How elevation becomes ply. */
  public sealed interface BandSpec permits NamedBands, BreakList {}

  /** A method by name. */
  public enum NamedBands implements BandSpec {
    SCALE,
    EQUAL_INTERVAL,
    EQUAL_AREA,
    NATURAL
  }

  /**
   * Falling break elevations, one fewer than the plies: the i-th parts listed ply i from i + 1. A
   * value on a break is the upper ply's.
   */
  public record BreakList(List<Double> breaksM) implements BandSpec {}
}
