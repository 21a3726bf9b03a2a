package plyscape.bands;

import java.util.ArrayList;
import java.util.List;
import plyscape.job.TerrainSpec;
import plyscape.layup.PlyDepth;
import plyscape.terrain.Terrain;

/** Gives each listed ply its range of elevations, by the method that the job names. */
public final class BandMaker {

  private BandMaker() {}

  /**
   * The bands of a terrain.
   *
   * @param spec listed plies and method
   * @param terrain elevations over the carved area
   * @param depths every ply of the layup, top to bottom
   */
  public static Bands make(TerrainSpec spec, Terrain terrain, List<PlyDepth> depths) {
    List<Integer> plies = spec.plyNumbers();
    if (plies.size() == 1) {
      return new Bands(plies, List.of());
    }
    if (spec.bands() instanceof TerrainSpec.BreakList list) {
      return new Bands(plies, list.breaksM());
    }
    if (!(terrain.zmaxM() > terrain.zminM())) {
      return new Bands(List.of(plies.get(0)), List.of());
    }
    List<Double> breaks =
        switch ((TerrainSpec.NamedBands) spec.bands()) {
          case SCALE -> ScaleBreaks.breaks(terrain.zminM(), terrain.zmaxM(), mids(plies, depths));
          case EQUAL_INTERVAL -> IntervalBreaks.breaks(terrain.zminM(), terrain.zmaxM(), plies.size());
          case EQUAL_AREA -> QuantileBreaks.breaks(CarvedCells.of(terrain), plies.size());
          case NATURAL -> FisherBreaks.breaks(CarvedCells.of(terrain), plies.size());
        };
    return withoutEmpty(plies, breaks, terrain.zminM(), terrain.zmaxM());
  }

  private static double[] mids(List<Integer> plies, List<PlyDepth> depths) {
    return plies.stream().mapToDouble(number -> depths.get(number - 1).midMm()).toArray();
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
