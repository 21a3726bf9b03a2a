package plyscape.layup;

import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import plyscape.layup.statistics.BestEstimate;
import plyscape.layup.statistics.ColourRisk;

/**
 * Depths of all interfaces of a stack at all places from any readings: the {@link BestEstimate},
 * which is the posterior mean of normal errors.
 *
 * <p>The model: depth of interface k at (x, y) is {@code sum over the layers above of (t (1 + a) +
 * e) + D_k (b x + c y + d (x^2 + y^2))}, with D the nominal depth; a common share {@code a} that
 * nothing is known of beforehand; layer errors {@code e}, tapers {@code b} and {@code c}, bow
 * {@code d} and the readings' errors normal about 0 with their tolerance as 3 sigma. Without
 * readings a, b, c and d are 0.
 *
 * <p>If no layer has a tolerance, each counts as uncertain with a variance in proportion to its
 * thickness: that decides how a difference is shared out, and adds nothing to the tolerances.
 */
public final class StackEstimate {

  /** Stands for the deviation of an exact reading: far below what is read, far above rounding. */
  private static final double EXACT_MM = 1e-6;

  /** Sources that are the press's: two tapers and the bow. */
  private static final int PRESS = 3;

  private final LayerStack stack;
  private final List<StackReading> readings;
  private final double[] toleranceMm;
  private final double[] variance;
  private final double[] nominalMm;

  /** Null without readings. */
  private final BestEstimate best;

  private final double[] residual;

  /** Worked out when first asked for; the same whoever does it. */
  private final AtomicReferenceArray<BoundaryForm> forms;

  /**
   * Estimates.
   *
   * @param press plus or minus of b and c, and of d
   */
  public StackEstimate(LayerStack stack, PressShape press, List<StackReading> readings) {
    this.stack = stack;
    this.readings = List.copyOf(readings);
    int layers = stack.layers();
    nominalMm = new double[layers + 1];
    for (int k = 0; k <= layers; k++) {
      nominalMm[k] = stack.totalMm(0, k);
    }
    toleranceMm = new double[layers + PRESS + readings.size()];
    variance = new double[toleranceMm.length];
    fillSources(press);
    residual = new double[readings.size()];
    for (int i = 0; i < readings.size(); i++) {
      residual[i] = readings.get(i).depthMm() - nominalMm[readings.get(i).interfaceIndex()];
    }
    best = readings.isEmpty() ? null : new BestEstimate(covariance(), drift());
    forms = new AtomicReferenceArray<>(layers + 1);
  }

  /** Where an interface lies. */
  public BoundaryForm at(int interfaceIndex) {
    BoundaryForm form = forms.get(interfaceIndex);
    if (form == null) {
      form = form(interfaceIndex);
      forms.set(interfaceIndex, form);
    }
    return form;
  }

  /** The readings, in order. */
  public List<StackReading> readings() {
    return readings;
  }

  /** How far a reading lies from what all others say. */
  public BestEstimate.LeftOut leftOut(int reading) {
    return best.leftOut(reading, residual);
  }

  private void fillSources(PressShape press) {
    int layers = stack.layers();
    boolean none = stack.toleranceSumMm(0, layers) == 0;
    for (int j = 0; j < layers; j++) {
      toleranceMm[j] = stack.toleranceMm(j);
      variance[j] = none ? stack.thicknessMm(j) : sigmaSquare(toleranceMm[j]);
    }
    for (int s = layers; s < toleranceMm.length; s++) {
      int reading = s - layers - PRESS;
      double shape = s < layers + 2 ? press.taperTolerance() : press.bowTolerance();
      toleranceMm[s] = reading < 0 ? shape : readings.get(reading).toleranceMm();
      variance[s] =
          sigmaSquare(reading < 0 ? toleranceMm[s] : Math.max(toleranceMm[s], 3 * EXACT_MM));
    }
  }

  private static double sigmaSquare(double tolerance) {
    return tolerance * tolerance / (ColourRisk.SIGMAS * ColourRisk.SIGMAS);
  }

  private double[][] covariance() {
    int n = readings.size();
    double[][] matrix = new double[n][n];
    for (int i = 0; i < n; i++) {
      StackReading a = readings.get(i);
      for (int j = 0; j <= i; j++) {
        StackReading b = readings.get(j);
        double taper =
            variance[stack.layers()] * a.x() * b.x()
                + variance[stack.layers() + 1] * a.y() * b.y()
                + variance[stack.layers() + 2] * outwards(a) * outwards(b);
        double value =
            shared(a.interfaceIndex(), b.interfaceIndex())
                + nominalMm[a.interfaceIndex()] * nominalMm[b.interfaceIndex()] * taper;
        matrix[i][j] = value;
        matrix[j][i] = value;
      }
      matrix[i][i] += variance[readingSource(i)];
    }
    return matrix;
  }

  private double[][] drift() {
    return readings.stream()
        .map(r -> new double[] {nominalMm[r.interfaceIndex()]})
        .toArray(double[][]::new);
  }

  /** Number of a reading's own error among the sources. */
  public int readingSource(int reading) {
    return stack.layers() + PRESS + reading;
  }

  private static double outwards(StackReading at) {
    return at.x() * at.x() + at.y() * at.y();
  }

  /** Variance of the layers above both interfaces. */
  private double shared(int a, int b) {
    double sum = 0;
    for (int j = 0; j < Math.min(a, b); j++) {
      sum += variance[j];
    }
    return sum;
  }

  private BoundaryForm form(int k) {
    double[] mean = {nominalMm[k], 0, 0, 0};
    double[][] coefficients = new double[1 + PRESS][toleranceMm.length];
    for (int j = 0; j < k; j++) {
      coefficients[0][j] = 1;
    }
    coefficients[1][stack.layers()] = nominalMm[k];
    coefficients[2][stack.layers() + 1] = nominalMm[k];
    coefficients[3][stack.layers() + 2] = nominalMm[k];
    for (int part = 0; part <= PRESS && best != null; part++) {
      double[] weights = weights(k, part);
      for (int i = 0; i < readings.size(); i++) {
        StackReading r = readings.get(i);
        double w = weights[i];
        mean[part] += w * residual[i];
        for (int j = 0; j < r.interfaceIndex(); j++) {
          coefficients[part][j] -= w;
        }
        coefficients[part][stack.layers()] -= w * nominalMm[r.interfaceIndex()] * r.x();
        coefficients[part][stack.layers() + 1] -= w * nominalMm[r.interfaceIndex()] * r.y();
        coefficients[part][stack.layers() + 2] -= w * nominalMm[r.interfaceIndex()] * outwards(r);
        coefficients[part][readingSource(i)] -= w;
      }
    }
    return new BoundaryForm(mean, coefficients, toleranceMm);
  }

  /** Weights of the readings for one of the four parts of an interface's depth. */
  private double[] weights(int k, int part) {
    int n = readings.size();
    double[] covariance = new double[n];
    for (int i = 0; i < n; i++) {
      StackReading r = readings.get(i);
      double depths = nominalMm[k] * nominalMm[r.interfaceIndex()];
      covariance[i] =
          switch (part) {
            case 0 -> shared(k, r.interfaceIndex());
            case 1 -> depths * variance[stack.layers()] * r.x();
            case 2 -> depths * variance[stack.layers() + 1] * r.y();
            default -> depths * variance[stack.layers() + 2] * outwards(r);
          };
    }
    return best.weights(covariance, part == 0 ? nominalMm[k] : 0);
  }
}
