package plyscape.layup.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import plyscape.layup.Boundary;
import plyscape.layup.LayerStack;
import plyscape.layup.Layup;
import plyscape.layup.Method;
import plyscape.layup.PanelPoint;
import plyscape.layup.PressedPanel;
import plyscape.layup.StackEstimate;
import plyscape.layup.calibration.ReadingOutliers.Scatter;
import plyscape.layup.statistics.BestEstimate;
import plyscape.layup.statistics.ColourRisk;
import plyscape.layup.statistics.NormalTail;

/**
 * A layup with measured bottoms from readings, several an edge, with noise. Readings that don't fit
 * are set aside: first those off the others of the same edge, then those off what all others and
 * the plies' tolerances say. What is left is averaged by place and ply, and handed to the one
 * estimate ({@link StackEstimate}) with tolerances that hold all that went into them.
 *
 * @param layup with the readings as measured bottoms or places
 * @param boundaries where they put the bottoms that were read, place by place
 * @param outliers readings that were set aside, with how far off they are
 * @param noise how readings scatter
 */
public record Calibration(
    Layup layup, List<Boundary> boundaries, List<SetAside> outliers, Noise noise) {

  /** Readings are set aside when chance would make one of all so far off less often than this. */
  private static final double FALSE_ALARM = 0.001;

  private static final double SIGMAS_95 = 1.959963984540054;

  /**
   * One ply's bottom at one place.
   *
   * @param at the place, or null where it isn't known
   * @param depthMm its depth by all that is known
   * @param toleranceMm the true depth lies this near in 99.73 %, the plus or minus of this project
   * @param halfWidth95Mm the true depth lies this near in 95 % of cases
   * @param readings how many readings were used there, of this bottom and the top below it
   */
  public record Boundary(
      PanelPoint at,
      int plyNumber,
      double depthMm,
      double toleranceMm,
      double halfWidth95Mm,
      int readings) {}

  /** A reading set aside and its signed distance from what the others say, mm. */
  public record SetAside(Reading reading, double offMm) {}

  /**
   * How readings scatter.
   *
   * @param sigmaMm standard deviation of a reading: as estimated, or 0 when all was stated and fits
   * @param degrees degrees of freedom of that estimate, 0 when nothing was estimated
   * @param factor how many times more readings scatter than their stated tolerances say; 1 unless
   *     that is past doubt
   */
  public record Noise(double sigmaMm, int degrees, double factor) {}

  /**
   * Fits readings.
   *
   * @param readings of plies of the layup, no top of ply 1, depths positive, at least one
   * @throws plyscape.fault.InputFault if the layup that comes out would be refused
   */
  public static Calibration of(Layup layup, List<Reading> readings, CalibrationRules rules) {
    ReadingNoise noise = ReadingNoise.of(layup, readings, rules);
    List<SetAside> outliers = new ArrayList<>(noise.outliers());
    List<Reading> used = new ArrayList<>(noise.used());
    double quantile = noise.quantile();
    CalibratedReadings found =
        new CalibratedReadings(layup, bottoms(layup, used, noise, quantile), rules);
    for (int worst = worst(found); worst >= 0; worst = worst(found)) {
      ReadBottom bottom = found.bottoms().get(worst);
      double off = found.leftOut(worst).off();
      for (Reading r : List.copyOf(used)) {
        int ply = r.top() ? r.plyNumber() - 1 : r.plyNumber();
        if (ply == bottom.plyNumber() && java.util.Objects.equals(r.at(), bottom.at())) {
          outliers.add(new SetAside(r, off));
          used.remove(r);
        }
      }
      found = new CalibratedReadings(layup, bottoms(layup, used, noise, quantile), rules);
    }
    PressedPanel pressed = PressedPanel.of(found.layup(), false);
    PressedPanel sure = pressed;
    if (noise.degrees() > 0) { // few readings gave the scatter: 95 % are less wide than 3 sigma say
      double narrower = noise.quantile95() * ColourRisk.SIGMAS / SIGMAS_95;
      sure =
          PressedPanel.unchecked(
              new CalibratedReadings(layup, bottoms(layup, used, noise, narrower), rules).layup());
    }
    PressedPanel held95 = sure;
    return new Calibration(
        found.layup(),
        found.bottoms().stream().map(b -> boundary(pressed, held95, b)).toList(),
        List.copyOf(outliers),
        noise.noise());
  }

  private static Boundary boundary(PressedPanel pressed, PressedPanel held95, ReadBottom b) {
    int face = LayerStack.bottomOf(b.plyNumber());
    PanelPoint at = b.at() == null ? pressed.measuredAt() : b.at();
    return new Boundary(
        b.at(),
        b.plyNumber(),
        pressed.depthMm(face, at),
        pressed.toleranceMm(face, at, Method.RSS),
        held95.toleranceMm(face, at, Method.RSS) * SIGMAS_95 / ColourRisk.SIGMAS,
        b.readings());
  }

  /** The bottom farthest from what all others say, or -1 when none is past doubt. */
  private static int worst(CalibratedReadings found) {
    int n = found.bottoms().size();
    double most = NormalTail.inverse(FALSE_ALARM / 2 / n);
    int worst = -1;
    for (int i = 0; i < n && n > 1; i++) {
      BestEstimate.LeftOut left = found.leftOut(i);
      double sigmas = Math.abs(left.off()) / left.sigma();
      if (sigmas > most) {
        most = sigmas;
        worst = i;
      }
    }
    return worst;
  }

  /** Means by place and ply; a top read is the bottom above it through the glue line. */
  private static List<ReadBottom> bottoms(
      Layup layup, List<Reading> used, ReadingNoise noise, double quantile) {
    Map<Object, ReadBottom> out = new LinkedHashMap<>();
    Scatter scatter = Scatter.of(used, noise.stated());
    Map<Reading.ReadEdge, Boolean> cut = new LinkedHashMap<>();
    used.forEach(r -> cut.merge(r.edge(), r.cut(), Boolean::logicalOr));
    scatter
        .cells()
        .forEach(
            (edge, cell) -> {
              boolean top = edge.interfaceIndex() % 2 == 0;
              int ply = top ? edge.interfaceIndex() / 2 : (edge.interfaceIndex() + 1) / 2;
              double tolerance = quantile * noise.factor() / Math.sqrt(cell.weight());
              ReadBottom one =
                  new ReadBottom(
                      edge.at(),
                      ply,
                      cell.mean() - (top ? layup.glueLine().thicknessMm() : 0),
                      top ? Math.hypot(tolerance, layup.glueLine().toleranceMm()) : tolerance,
                      cut.get(edge),
                      cell.count());
              out.merge(List.of(String.valueOf(edge.at()), ply), one, ReadBottom::and);
            });
    List<ReadBottom> sorted = new ArrayList<>();
    Map<String, TreeMap<Integer, ReadBottom>> places = new LinkedHashMap<>();
    out.values()
        .forEach(
            b ->
                places
                    .computeIfAbsent(String.valueOf(b.at()), p -> new TreeMap<>())
                    .put(b.plyNumber(), b));
    places.values().forEach(p -> sorted.addAll(p.values()));
    return sorted;
  }
}
