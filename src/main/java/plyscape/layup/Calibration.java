package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import plyscape.layup.ReadingOutliers.Scatter;

/**
 * Ply bottoms from readings, several an edge, with noise: weighted least squares with the order of
 * plies and positive glue lines kept. A reading of a ply's top tells the bottom of the ply above
 * through the glue line, which is held to its nominal thickness as firmly as its tolerance says.
 * Bottoms that the layup had measured and that weren't read again stay.
 *
 * @param boundaries what was found, in order
 * @param outliers readings that were set aside, with how far off they are
 * @param readingSigmaMm standard deviation of a reading: as estimated, or 0 when all was stated and
 *     fits
 * @param degrees degrees of freedom of that estimate, 0 when nothing was estimated
 * @param scatterFactor how many times more readings scatter than their stated tolerances say; 1
 *     unless that is past doubt
 * @param ordered whether the order had to be enforced
 */
public record Calibration(
    List<Boundary> boundaries,
    List<SetAside> outliers,
    double readingSigmaMm,
    int degrees,
    double scatterFactor,
    boolean ordered) {

  /**
   * A layer keeps at least this share of its nominal thickness: order and positive glue lines, and
   * nothing more.
   */
  private static final double LEAST_SHARE = 0.01;

  /**
   * Deviation that stands for "exactly": far below anything that can be read, far above rounding.
   */
  private static final double EXACT_MM = 1e-5;

  /**
   * Readings are believed to scatter more than stated when chance would do it less often than this.
   */
  private static final double DOUBT = 0.001;

  /** Pooled scatter of fewer degrees of freedom than this is too vague to be used. */
  private static final int LEAST_DEGREES = 4;

  private static final double THREE_SIGMA = 0.9973002039367398;

  /**
   * One ply's bottom.
   *
   * @param plyNumber the ply
   * @param depthMm its depth
   * @param halfWidth95Mm the true depth lies this near in 95 % of cases
   * @param toleranceMm the same for 99.73 %, the plus or minus of this project
   * @param readings how many readings were used, of this bottom and the top below it; 0 when kept
   *     from the layup
   */
  public record Boundary(
      int plyNumber, double depthMm, double halfWidth95Mm, double toleranceMm, int readings) {}

  /** A reading set aside and its signed distance from the mean of the others, mm. */
  public record SetAside(Reading reading, double offMm) {}

  /** Depths for a layup's {@code measured_bottoms}. */
  public SortedMap<Integer, Double> bottomsMm() {
    SortedMap<Integer, Double> out = new TreeMap<>();
    boundaries.forEach(b -> out.put(b.plyNumber(), b.depthMm()));
    return out;
  }

  /** Plus or minus for {@code measured_bottoms_tolerance}: the largest of all. */
  public double toleranceMm() {
    return boundaries.stream().mapToDouble(Boundary::toleranceMm).max().orElse(0);
  }

  /**
   * Fits readings.
   *
   * @param readings of plies of the layup, no top of ply 1, depths positive, at least one
   * @param defaultToleranceMm plus or minus of a reading that states none, when scatter can't be
   *     told from the readings
   * @param believeDefault take the default even where scatter could be told
   */
  public static Calibration of(
      Layup layup, List<Reading> readings, double defaultToleranceMm, boolean believeDefault) {
    double[] expected = expected(layup);
    List<Reading> used = new ArrayList<>(readings);
    boolean none = readings.stream().allMatch(r -> r.toleranceMm() == 0);
    boolean stated =
        !none || believeDefault || Scatter.of(readings, false).degrees() < LEAST_DEGREES;
    if (stated) {
      used.replaceAll(
          r ->
              r.toleranceMm() > 0
                  ? r
                  : new Reading(r.row(), r.plyNumber(), r.top(), r.depthMm(), defaultToleranceMm));
    }
    List<SetAside> outliers =
        ReadingOutliers.remove(used, stated, expected).stream()
            .map(o -> new SetAside(o.reading(), o.offMm()))
            .toList();
    Scatter scatter = Scatter.of(used, stated);
    double factor = 1;
    int degrees = 0;
    if (!stated) {
      degrees = scatter.degrees();
      factor = Math.max(Math.sqrt(scatter.squares() / degrees), EXACT_MM);
    } else if (scatter.degrees() > 0
        && StudentTail.chiSquareAbove(scatter.squares(), scatter.degrees()) < DOUBT) {
      degrees = scatter.degrees();
      factor = Math.sqrt(scatter.squares() / degrees);
    }
    return fit(layup, expected, scatter, outliers, factor, degrees);
  }

  private static Calibration fit(
      Layup layup,
      double[] expected,
      Scatter scatter,
      List<SetAside> outliers,
      double factor,
      int degrees) {
    int[] faces = faces(layup, scatter);
    int n = faces.length;
    double[] weight = new double[n];
    double[] value = new double[n];
    double[] start = new double[n];
    double[] coupling = new double[n];
    double[] difference = new double[n];
    double[] gap = new double[n];
    LayerStack stack = LayerStack.of(layup);
    double glueSigma = Math.max(layup.glueLine().toleranceMm() / ColourRisk.SIGMAS, EXACT_MM);
    double room =
        layup.measured().thicknessMm() == null
            ? Double.POSITIVE_INFINITY
            : layup.measured().thicknessMm();
    for (int k = 0; k < n; k++) {
      Scatter.Cell cell = scatter.cells().get(faces[k]);
      Double kept = faces[k] % 2 == 1 ? layup.measured().bottomsMm().get((faces[k] + 1) / 2) : null;
      if (cell != null) {
        weight[k] = cell.weight() / (factor * factor);
        value[k] = cell.mean();
      } else if (kept != null && !read(scatter, faces[k])) {
        weight[k] = 1 / (EXACT_MM * EXACT_MM);
        value[k] = kept;
      }
      start[k] = expected[faces[k]];
      if (k + 1 < n) {
        gap[k] = LEAST_SHARE * stack.totalMm(faces[k], faces[k + 1]);
        if (faces[k] % 2 == 1 && faces[k + 1] == faces[k] + 1) {
          coupling[k] = 1 / (glueSigma * glueSigma);
          difference[k] = layup.glueLine().thicknessMm();
        }
      }
    }
    ChainFit chain = new ChainFit(weight, value, coupling, difference);
    double least = LEAST_SHARE * stack.totalMm(0, faces[0]);
    double greatest = room - LEAST_SHARE * stack.totalMm(faces[n - 1], stack.layers());
    double[] x = chain.ordered(start, gap, least, greatest);
    double[] deviation = chain.deviations();
    double[] free = chain.free();
    boolean ordered = false;
    List<Boundary> boundaries = new ArrayList<>();
    double q95 = degrees == 0 ? NormalTail.inverse(0.025) : StudentTail.halfWidth(0.95, degrees);
    double q3 = degrees == 0 ? ColourRisk.SIGMAS : StudentTail.halfWidth(THREE_SIGMA, degrees);
    for (int k = 0; k < n; k++) {
      ordered |= Math.abs(x[k] - free[k]) > 1e-9;
      if (faces[k] % 2 == 1) {
        int readings = count(scatter, faces[k]) + count(scatter, faces[k] + 1);
        boundaries.add(
            readings == 0
                ? new Boundary(
                    (faces[k] + 1) / 2,
                    x[k],
                    layup.measured().bottomsToleranceMm() * q95 / q3,
                    layup.measured().bottomsToleranceMm(),
                    0)
                : new Boundary(
                    (faces[k] + 1) / 2, x[k], q95 * deviation[k], q3 * deviation[k], readings));
      }
    }
    boolean estimated = !scatter.stated();
    return new Calibration(
        List.copyOf(boundaries),
        outliers,
        estimated ? factor : 0,
        degrees,
        estimated ? 1 : factor,
        ordered);
  }

  private static boolean read(Scatter scatter, int bottomFace) {
    return count(scatter, bottomFace) + count(scatter, bottomFace + 1) > 0;
  }

  private static int count(Scatter scatter, int face) {
    Scatter.Cell cell = scatter.cells().get(face);
    return cell == null ? 0 : cell.count();
  }

  /**
   * Interfaces in the fit: every bottom read, told by the top below it, or kept; and every top
   * read.
   */
  private static int[] faces(Layup layup, Scatter scatter) {
    Map<Integer, Boolean> faces = new TreeMap<>();
    for (int face : scatter.cells().keySet()) {
      faces.put(face, true);
      faces.put(face % 2 == 1 ? face : face - 1, true);
    }
    for (int ply : layup.measured().bottomsMm().keySet()) {
      faces.put(LayerStack.bottomOf(ply), true);
    }
    return faces.keySet().stream().mapToInt(Integer::intValue).toArray();
  }

  /** Depths without the measured bottoms: in order whatever they were. */
  private static double[] expected(Layup l) {
    PressedPanel pressed = PressedPanel.of(l.withBottoms(new TreeMap<>(), 0), true);
    double[] depths = new double[pressed.stack().layers() + 1];
    for (int i = 0; i < depths.length; i++) {
      depths[i] = pressed.depthMm(i);
    }
    return depths;
  }
}
