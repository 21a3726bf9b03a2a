package plyscape.bands;

import java.util.ArrayList;
import java.util.List;
import plyscape.job.GroundCover;
import plyscape.job.TerrainSpec;
import plyscape.layup.Depths;
import plyscape.terrain.Terrain;

/** Gives each listed ply its range of elevations, by the method that the job names. */
public final class BandMaker {

  private BandMaker() {}

  /**
   * The bands of a terrain. With a sea, the ground above it is parted among the listed plies but
   * the sea's, and everything at or under the level is the sea's; it stands last, wherever its ply
   * lies in the layup.
   *
   * @param spec listed plies, method and sea
   * @param terrain elevations over the carved area
   * @param depths every ply of the layup, top to bottom
   */
  public static Bands make(TerrainSpec spec, Terrain terrain, Depths depths) {
    GroundCover.Sea sea = spec.options().cover().sea();
    if (sea == null || sea.levelM() < terrain.zminM()) {
      return land(spec.plyNumbers(), spec.bands(), terrain, terrain.zminM(), depths);
    }
    List<Integer> plies =
        spec.plyNumbers().stream().filter(number -> number != sea.plyNumber()).toList();
    if (plies.isEmpty() || sea.levelM() >= terrain.zmaxM()) {
      return new Bands(List.of(sea.plyNumber()), List.of());
    }
    TerrainSpec.BandSpec method = spec.bands();
    if (method instanceof TerrainSpec.BreakList list && plies.size() < spec.plyNumbers().size()) {
      method = without(list, spec.plyNumbers().indexOf(sea.plyNumber()));
    }
    Bands land = land(plies, method, terrain, sea.levelM(), depths);
    List<Integer> withSea = new ArrayList<>();
    List<Double> breaks = new ArrayList<>();
    for (int i = 0; i < land.plyNumbers().size(); i++) {
      if (i == 0 || land.breaksM().get(i - 1) > sea.levelM()) {
        withSea.add(land.plyNumbers().get(i));
        boolean parts = i < land.breaksM().size() && land.breaksM().get(i) > sea.levelM();
        // A value on a break is the upper ply's, but the level itself is sea.
        breaks.add(parts ? land.breaksM().get(i) : Math.nextUp(sea.levelM()));
      }
    }
    withSea.add(sea.plyNumber());
    return new Bands(withSea, breaks);
  }

  /**
   * The list without one ply: its upper neighbour takes over, or for the first ply the lower one.
   */
  private static TerrainSpec.BreakList without(TerrainSpec.BreakList list, int ply) {
    List<Double> breaks = new ArrayList<>(list.breaksM());
    if (!breaks.isEmpty()) {
      breaks.remove(Math.min(ply, breaks.size() - 1));
    }
    return new TerrainSpec.BreakList(breaks);
  }

  private static Bands land(
      List<Integer> plies,
      TerrainSpec.BandSpec method,
      Terrain terrain,
      double zminM,
      Depths depths) {
    if (plies.size() == 1) {
      return new Bands(plies, List.of());
    }
    if (method instanceof TerrainSpec.BreakList list) {
      return new Bands(plies, list.breaksM());
    }
    double zmaxM = terrain.zmaxM();
    double[] rising = byCells(method) ? CarvedCells.of(terrain, zminM) : new double[] {zmaxM};
    if (!(zmaxM > zminM) || rising.length == 0) {
      return new Bands(List.of(plies.get(0)), List.of());
    }
    List<Double> breaks =
        switch ((TerrainSpec.NamedBands) method) {
          case SCALE -> ScaleBreaks.breaks(zminM, zmaxM, mids(plies, depths));
          case EQUAL_INTERVAL -> IntervalBreaks.breaks(zminM, zmaxM, plies.size());
          case EQUAL_AREA -> QuantileBreaks.breaks(rising, plies.size());
          case NATURAL -> FisherBreaks.breaks(rising, plies.size());
        };
    return withoutEmpty(plies, breaks, zminM, zmaxM);
  }

  private static boolean byCells(TerrainSpec.BandSpec method) {
    return method == TerrainSpec.NamedBands.EQUAL_AREA || method == TerrainSpec.NamedBands.NATURAL;
  }

  private static double[] mids(List<Integer> plies, Depths depths) {
    return plies.stream().mapToDouble(number -> depths.of(number).midMm()).toArray();
  }

  /** Drops plies whose band holds no elevation between the least and the greatest. */
  static Bands withoutEmpty(List<Integer> plies, List<Double> breaks, double zminM, double zmaxM) {
    List<Integer> keptPlies = new ArrayList<>();
    List<Double> keptBreaks = new ArrayList<>();
    double high = Double.POSITIVE_INFINITY;
    for (int i = 0; i < plies.size(); i++) {
      double low = i < breaks.size() ? breaks.get(i) : Double.NEGATIVE_INFINITY;
      if (low < high && low <= zmaxM && high > zminM) {
        if (!keptPlies.isEmpty()) {
          keptBreaks.add(high);
        }
        keptPlies.add(plies.get(i));
        high = low;
      } else if (keptPlies.isEmpty()) {
        high = Math.min(high, low);
      }
    }
    return new Bands(keptPlies, keptBreaks);
  }
}
