package plyscape.layup;

import java.util.List;
import plyscape.layup.statistics.ColourRisk;
import plyscape.layup.statistics.LinearSystem;
import plyscape.layup.statistics.SeededNormals;

/**
 * Draws pressed panels with what would be read of them, and the error that an estimate from those
 * readings has: for checks of the closed forms by counting.
 *
 * <p>Shares nothing with {@link StackEstimate} but the model: here layers and tapers are unknowns
 * of a least squares problem with one equation for each prior and each reading, solved by its
 * normal equations. Not safe for use by several threads.
 */
final class PanelDraw {

  /** Stands for the deviation of an exact reading. */
  private static final double EXACT_MM = 1e-6;

  private final LayerStack stack;
  private final List<StackReading> readings;
  private final boolean bows;
  private final double[] sigma;
  private final double[][] rows;

  /** Estimate of each unknown from the errors of the readings. */
  private final double[][] gain;

  private final double[] error;

  /**
   * States the problem.
   *
   * @param pressed the panel, with its readings
   */
  PanelDraw(PressedPanel pressed) {
    stack = pressed.stack();
    readings = pressed.readings();
    int layers = stack.layers();
    bows = pressed.press().bowTolerance() > 0;
    sigma = new double[layers + (bows ? 3 : 2)];
    for (int j = 0; j < layers; j++) {
      sigma[j] = stack.toleranceMm(j) / ColourRisk.SIGMAS;
    }
    sigma[layers] = pressed.press().taperTolerance() / ColourRisk.SIGMAS;
    sigma[layers + 1] = sigma[layers];
    if (bows) {
      sigma[layers + 2] = pressed.press().bowTolerance() / ColourRisk.SIGMAS;
    }
    rows = new double[readings.size()][];
    for (int i = 0; i < rows.length; i++) {
      StackReading r = readings.get(i);
      rows[i] = row(r.interfaceIndex(), r.x(), r.y());
    }
    gain = rows.length == 0 ? new double[sigma.length + 1][0] : gain();
    error = new double[sigma.length + 1];
  }

  /** Draws a panel and its readings; {@link #errorMm} then tells of it. */
  void next(SeededNormals normals) {
    java.util.Arrays.fill(error, 0);
    for (int s = 0; s < sigma.length; s++) {
      error[s] = normals.next() * sigma[s];
    }
    double[] read = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      read[i] = normals.next() * readings.get(i).toleranceMm() / ColourRisk.SIGMAS;
      for (int s = 0; s < error.length; s++) {
        read[i] += rows[i][s] * error[s];
      }
    }
    for (int s = 0; s < error.length; s++) {
      for (int i = 0; i < read.length; i++) {
        error[s] -= gain[s][i] * read[i];
      }
    }
  }

  /** How much deeper than estimated an interface lies in the panel drawn last. */
  double errorMm(int interfaceIndex, double x, double y) {
    double sum = 0;
    double[] row = row(interfaceIndex, x, y);
    for (int s = 0; s < row.length; s++) {
      sum += row[s] * error[s];
    }
    return sum;
  }

  /** The unknowns: layer errors, two tapers, the bow if there is one, the common share. */
  private double[] row(int interfaceIndex, double x, double y) {
    double[] row = new double[sigma.length + 1];
    java.util.Arrays.fill(row, 0, interfaceIndex, 1);
    double nominal = stack.totalMm(0, interfaceIndex);
    row[stack.layers()] = nominal * x;
    row[stack.layers() + 1] = nominal * y;
    if (bows) {
      row[stack.layers() + 2] = nominal * (x * x + y * y);
    }
    row[sigma.length] = nominal;
    return row;
  }

  private double[][] gain() {
    int unknowns = sigma.length + 1;
    boolean none = stack.toleranceSumMm(0, stack.layers()) == 0;
    double[] prior = new double[unknowns];
    for (int s = 0; s < sigma.length; s++) {
      double square = s < stack.layers() && none ? stack.thicknessMm(s) : sigma[s] * sigma[s];
      prior[s] = 1 / Math.max(square, EXACT_MM * EXACT_MM);
    }
    double[][] normal = new double[unknowns][unknowns];
    double[] weight = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      double reading = Math.max(readings.get(i).toleranceMm() / ColourRisk.SIGMAS, EXACT_MM);
      weight[i] = 1 / (reading * reading);
      for (int a = 0; a < unknowns; a++) {
        for (int b = 0; b < unknowns; b++) {
          normal[a][b] += weight[i] * rows[i][a] * rows[i][b];
        }
      }
    }
    for (int s = 0; s < unknowns; s++) {
      normal[s][s] += prior[s];
    }
    double[][] covariance = LinearSystem.inverse(normal);
    double[][] out = new double[unknowns][rows.length];
    for (int s = 0; s < unknowns; s++) {
      for (int i = 0; i < rows.length; i++) {
        for (int t = 0; t < unknowns; t++) {
          out[s][i] += covariance[s][t] * rows[i][t] * weight[i];
        }
      }
    }
    return out;
  }
}
