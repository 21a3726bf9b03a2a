package plyscape.layup.calibration;

import java.util.ArrayList;
import java.util.List;
import plyscape.layup.Bottoms;
import plyscape.layup.Layup;
import plyscape.layup.PressedPanel;
import plyscape.layup.calibration.ReadingOutliers.Scatter;
import plyscape.layup.statistics.ColourRisk;
import plyscape.layup.statistics.StudentTail;

/**
 * How readings scatter about the mean of those of the same edge: as stated, or estimated from the
 * readings themselves. Immutable.
 *
 * @param used readings that fit the others of their edge, each with a tolerance if stated
 * @param outliers those that don't
 * @param stated whether tolerances are taken as stated
 * @param factor deviation of a reading of weight 1: times what is stated, or in mm
 * @param degrees degrees of freedom of the factor, 0 when it isn't estimated
 */
record ReadingNoise(
    List<Reading> used,
    List<Calibration.SetAside> outliers,
    boolean stated,
    double factor,
    int degrees) {

  /** Stands for the deviation of readings that agree to the last digit, mm. */
  private static final double EXACT_MM = 1e-5;

  /** Readings scatter more than stated if chance would do it less often than this. */
  private static final double DOUBT = 0.001;

  /** Pooled scatter of fewer degrees of freedom than this is too vague to be used. */
  private static final int LEAST_DEGREES = 4;

  private static final double THREE_SIGMA = 0.9973002039367398;

  static ReadingNoise of(Layup layup, List<Reading> readings, CalibrationRules rules) {
    List<Reading> used = new ArrayList<>(readings);
    boolean none = readings.stream().allMatch(r -> r.toleranceMm() == 0);
    boolean stated =
        !none || rules.stated() || Scatter.of(readings, false).degrees() < LEAST_DEGREES;
    if (stated) {
      used.replaceAll(r -> r.toleranceMm() > 0 ? r : r.within(rules.readingToleranceMm()));
    }
    List<Calibration.SetAside> outliers =
        ReadingOutliers.remove(used, stated, expected(layup)).stream()
            .map(o -> new Calibration.SetAside(o.reading(), o.offMm()))
            .toList();
    Scatter scatter = Scatter.of(used, stated);
    int degrees = scatter.degrees();
    double factor = degrees == 0 ? 1 : Math.sqrt(scatter.squares() / degrees);
    if (!stated) {
      return new ReadingNoise(used, outliers, false, Math.max(factor, EXACT_MM), degrees);
    }
    boolean doubt = degrees > 0 && StudentTail.chiSquareAbove(scatter.squares(), degrees) < DOUBT;
    return new ReadingNoise(used, outliers, true, doubt ? factor : 1, doubt ? degrees : 0);
  }

  /** Deviations that make a plus or minus: 3, or more where few readings gave the deviation. */
  double quantile() {
    return degrees == 0 ? ColourRisk.SIGMAS : StudentTail.halfWidth(THREE_SIGMA, degrees);
  }

  /** Deviations that hold 95 %. */
  double quantile95() {
    return degrees == 0 ? 1.959963984540054 : StudentTail.halfWidth(0.95, degrees);
  }

  /** For people. */
  Calibration.Noise noise() {
    return new Calibration.Noise(stated ? 0 : factor, degrees, stated ? factor : 1);
  }

  /** Depths by the layup's thicknesses alone. */
  private static double[] expected(Layup layup) {
    PressedPanel pressed =
        PressedPanel.unchecked(
            layup.withMeasured(layup.measured().withBottoms(Bottoms.NONE).withPlaces(List.of())));
    double[] depths = new double[pressed.stack().layers() + 1];
    for (int i = 0; i < depths.length; i++) {
      depths[i] = pressed.depthMm(i);
    }
    return depths;
  }
}
