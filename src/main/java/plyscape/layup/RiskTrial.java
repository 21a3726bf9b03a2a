package plyscape.layup;

import java.util.ArrayList;
import java.util.List;

/**
 * Colour risk by sampling whole panels: a check of the closed form that shares only the expected
 * depths with it.
 *
 * <p>Each panel draws an error for every ply, every glue line, the flatness, the machine's Z and
 * the sanding, each normal with a third of its tolerance as deviation. Measured panels are
 * conditioned on what was measured by the general rule for normal errors (the drawn errors less
 * covariance times inverse covariance times what they miss the measured depths by), which needs no
 * formula for a stretch; then the measuring error itself is added, inside a stretch that of its
 * worse end. The share of panels whose face lies outside its ply is the risk; its standard error is
 * {@link Result#standardError()}.
 */
public final class RiskTrial {

  private final PressedDepths pressed;
  private final int[] held;
  private final double[][] gain;

  private RiskTrial(PressedDepths pressed) {
    this.pressed = pressed;
    this.held = heldInterfaces(pressed);
    this.gain = gain(pressed.stack(), held);
  }

  /**
   * Outcome for one ply.
   *
   * @param plyNumber the ply
   * @param panels how many were drawn
   * @param wrong how many of them showed another colour
   */
  public record Result(int plyNumber, int panels, int wrong) {

    /** Estimated risk. */
    public double risk() {
      return (double) wrong / panels;
    }

    /** Standard error of the estimate (binomial). */
    public double standardError() {
      return Math.sqrt(risk() * (1 - risk()) / panels);
    }
  }

  /** Draws panels and counts wrong faces, for each ply. The same seed gives the same counts. */
  public static List<Result> run(Layup layup, CutAllowance allowance, int panels, long seed) {
    Depths depths = DepthModel.depths(layup, allowance, true);
    RiskTrial trial = new RiskTrial(new PressedDepths(layup));
    SeededNormals normals = new SeededNormals(seed);
    int[] wrong = new int[depths.plies()];
    double[] error = new double[trial.pressed.stack().layers() + 1];
    double[] cut = {layup.flatnessMm(), allowance.zErrorMm(), allowance.sandingToleranceMm()};
    for (int p = 0; p < panels; p++) {
      trial.draw(normals, error);
      for (PlyDepth d : depths) {
        int number = d.ply().number();
        if (number == 1 && allowance.top() == Top.LEAVE) {
          continue;
        }
        double face = d.targetMm() + allowance.sandingMm();
        for (double tolerance : cut) {
          face += normals.next() * tolerance / ColourRisk.SIGMAS;
        }
        double top = d.topMm() + error[LayerStack.topOf(number)];
        double bottom = d.bottomMm() + error[LayerStack.bottomOf(number)];
        if (face < top || face > bottom) {
          wrong[number - 1]++;
        }
      }
    }
    List<Result> results = new ArrayList<>();
    for (int i = 0; i < wrong.length; i++) {
      results.add(new Result(i + 1, panels, wrong[i]));
    }
    return List.copyOf(results);
  }

  private void draw(SeededNormals normals, double[] error) {
    LayerStack stack = pressed.stack();
    error[0] = 0;
    for (int i = 0; i < stack.layers(); i++) {
      error[i + 1] = error[i] + normals.next() * stack.toleranceMm(i) / ColourRisk.SIGMAS;
    }
    double[] miss = new double[held.length];
    for (int k = 0; k < held.length; k++) {
      miss[k] = error[held[k]];
    }
    for (int j = 0; j < error.length; j++) {
      for (int k = 0; k < held.length; k++) {
        error[j] -= gain[j][k] * miss[k];
      }
    }
    addMeasuringErrors(normals, error);
  }

  private void addMeasuringErrors(SeededNormals normals, double[] error) {
    List<MeasuredDepths.Known> known = pressed.measured().known();
    double upper = 0;
    double upperTolerance = 0;
    int next = 1;
    double lower = known.size() > 1 ? normals.next() : 0;
    for (int j = 1; j < error.length; j++) {
      if (next < known.size() && known.get(next).interfaceIndex() == j) {
        error[j] += lower * known.get(next).toleranceMm() / ColourRisk.SIGMAS;
        upper = lower;
        upperTolerance = known.get(next).toleranceMm();
        next++;
        lower = next < known.size() ? normals.next() : 0;
      } else if (next < known.size() && known.get(next).toleranceMm() > upperTolerance) {
        error[j] += lower * known.get(next).toleranceMm() / ColourRisk.SIGMAS;
      } else {
        error[j] += upper * upperTolerance / ColourRisk.SIGMAS;
      }
    }
  }

  /**
   * Measured interfaces that add something: one that no error separates from the one above is held
   * by that already.
   */
  private static int[] heldInterfaces(PressedDepths pressed) {
    List<Integer> held = new ArrayList<>();
    int last = 0;
    for (MeasuredDepths.Known k : pressed.measured().known()) {
      if (pressed.stack().toleranceSquaresMm2(last, k.interfaceIndex()) > 0) {
        held.add(k.interfaceIndex());
        last = k.interfaceIndex();
      }
    }
    return held.stream().mapToInt(Integer::intValue).toArray();
  }

  /**
   * Covariance with the held interfaces times the inverse of their own; errors at i and j share the
   * layers above both.
   */
  private static double[][] gain(LayerStack stack, int[] held) {
    double[][] own = new double[held.length][held.length];
    for (int a = 0; a < held.length; a++) {
      for (int b = 0; b < held.length; b++) {
        own[a][b] = stack.toleranceSquaresMm2(0, Math.min(held[a], held[b]));
      }
    }
    double[][] gain = new double[stack.layers() + 1][];
    for (int j = 0; j < gain.length; j++) {
      double[] shared = new double[held.length];
      for (int a = 0; a < held.length; a++) {
        shared[a] = stack.toleranceSquaresMm2(0, Math.min(j, held[a]));
      }
      gain[j] = LinearSystem.solve(own, shared);
    }
    return gain;
  }
}
