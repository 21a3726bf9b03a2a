package plyscape.layup;

import java.util.ArrayList;
import java.util.List;
import plyscape.layup.statistics.ColourRisk;
import plyscape.layup.statistics.SeededNormals;

/**
 * Colour risk by sampling whole panels: a check of the closed form that shares only the expected
 * depths with it.
 *
 * <p>Each panel draws an error for every ply and every glue line, the taper, all readings, the
 * flatness, the machine's Z and the sanding, each normal with a third of its tolerance as
 * deviation; is measured, estimated and cut ({@link PanelDraw}); and shows a wrong colour where the
 * face lies outside its ply as drawn. The share of such panels is the risk; its standard error is
 * {@link Result#standardError()}.
 */
public final class RiskTrial {

  private RiskTrial() {}

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
    return run(layup, allowance, layup.measured().centre(), panels, seed);
  }

  /** The same at a place of the panel. */
  public static List<Result> run(
      Layup layup, CutAllowance allowance, PanelPoint at, int panels, long seed) {
    Depths depths = DepthModel.depths(layup, allowance, true).at(at);
    double x = LayupReadings.x(at, layup.measured().centre());
    double y = LayupReadings.y(at, layup.measured().centre());
    PanelDraw draw = new PanelDraw(PressedPanel.of(layup, true));
    SeededNormals normals = new SeededNormals(seed);
    int[] wrong = new int[depths.plies()];
    double[] cut = {layup.flatnessMm(), allowance.zErrorMm(), allowance.sandingToleranceMm()};
    for (int p = 0; p < panels; p++) {
      draw.next(normals);
      for (PlyDepth d : depths) {
        int number = d.ply().number();
        if (number == 1 && allowance.top() == Top.LEAVE) {
          continue;
        }
        double face = d.targetMm() + allowance.sandingMm();
        for (double tolerance : cut) {
          face += normals.next() * tolerance / ColourRisk.SIGMAS;
        }
        double top = d.topMm() + draw.errorMm(LayerStack.topOf(number), x, y);
        double bottom = d.bottomMm() + draw.errorMm(LayerStack.bottomOf(number), x, y);
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
}
