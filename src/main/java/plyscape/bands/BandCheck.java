package plyscape.bands;

import java.util.List;
import java.util.function.IntFunction;
import plyscape.fault.Warnings;
import plyscape.job.TerrainSpec;

/** Says which of the listed plies get no ground, and why that may be. */
public final class BandCheck {

  private BandCheck() {}

  /**
   * Adds a warning when there are any.
   *
   * @param names a ply's name by its number
   */
  public static void check(
      TerrainSpec spec, Bands bands, IntFunction<String> names, Warnings warnings) {
    List<String> empty =
        spec.plyNumbers().stream()
            .filter(number -> !bands.plyNumbers().contains(number))
            .map(names::apply)
            .toList();
    if (!empty.isEmpty()) {
      warnings.add(
          "ply-without-ground",
          String.join(", ", empty)
              + (empty.size() == 1 ? " is" : " are")
              + " listed for the terrain but no elevation falls to "
              + (empty.size() == 1 ? "it" : "them")
              + ": the ground is flat there, or much of it lies at one elevation; leave "
              + (empty.size() == 1 ? "it" : "them")
              + " out of terrain.plies, or give terrain.bands as elevations",
          "terrain.plies");
    }
  }
}
