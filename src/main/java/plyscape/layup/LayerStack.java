package plyscape.layup;

import java.util.Arrays;
import java.util.List;

/**
 * A layup as a plain stack of layers, ply, glue line, ply, ..., ply, with the interfaces between
 * them numbered 0 (the top face) to {@link #layers()} (the bottom face). Nominal: what was measured
 * is not in it. Immutable.
 */
public final class LayerStack {

  private final double[] thicknessMm;
  private final double[] toleranceMm;

  private LayerStack(double[] thicknessMm, double[] toleranceMm) {
    this.thicknessMm = thicknessMm;
    this.toleranceMm = toleranceMm;
  }

  /** The stack of a layup: 2n - 1 layers for n plies. */
  public static LayerStack of(Layup layup) {
    List<Ply> plies = layup.plies();
    double[] thickness = new double[2 * plies.size() - 1];
    double[] tolerance = new double[thickness.length];
    Arrays.fill(thickness, layup.glueLine().thicknessMm());
    Arrays.fill(tolerance, layup.glueLine().toleranceMm());
    for (int i = 0; i < plies.size(); i++) {
      thickness[2 * i] = plies.get(i).thicknessMm();
      tolerance[2 * i] = plies.get(i).toleranceMm();
    }
    return new LayerStack(thickness, tolerance);
  }

  /** Interface at the top of a ply. */
  public static int topOf(int plyNumber) {
    return 2 * plyNumber - 2;
  }

  /** Interface at the bottom of a ply. */
  public static int bottomOf(int plyNumber) {
    return 2 * plyNumber - 1;
  }

  /** Count of layers, glue lines included. */
  public int layers() {
    return thicknessMm.length;
  }

  /** Nominal thickness of the layer between interfaces {@code layer} and {@code layer + 1}. */
  double thicknessMm(int layer) {
    return thicknessMm[layer];
  }

  /** Tolerance of the same. */
  double toleranceMm(int layer) {
    return toleranceMm[layer];
  }

  /** Nominal thickness between two interfaces. */
  double totalMm(int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += thicknessMm[i];
    }
    return sum;
  }

  /** Plain sum of the tolerances between two interfaces. */
  double toleranceSumMm(int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += toleranceMm[i];
    }
    return sum;
  }
}
