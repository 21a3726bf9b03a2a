package plyscape.planner.advice;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Tool;
import plyscape.text.Numbers;

/**
 * Flat cutters that a shop with a small router is likely to have or to get: diameters of 1 to 6 mm,
 * as collets of small spindles end there (common practice, no source).
 */
public final class CommonCutters {

  private static final List<Double> DIAMETERS_MM = List.of(1.0, 1.5, 2.0, 3.0, 4.0, 6.0);

  /** A listed cutter this near to a common one stands for it: 3.175 for 3, 6.35 for 6. */
  private static final double SAME_SHARE = 0.1;

  private CommonCutters() {}

  /**
   * Those that a list lacks, each run as the listed one nearest to it in diameter: with the same
   * feeds and stepdown, which a larger one bears; a smaller one with less in proportion.
   *
   * @param tools at least one flat cutter among them
   * @param deepestMm how long flutes have to be
   */
  public static List<Tool> lackedBy(List<Tool> tools, double deepestMm) {
    List<Tool> flat = tools.stream().filter(t -> t.shape() == Tool.Shape.FLAT).toList();
    List<Tool> lacked = new ArrayList<>();
    for (double diameter : DIAMETERS_MM) {
      Tool nearest = null;
      for (Tool tool : flat) {
        if (nearest == null || apart(tool, diameter) < apart(nearest, diameter)) {
          nearest = tool;
        }
      }
      if (nearest != null && apart(nearest, diameter) > SAME_SHARE) {
        lacked.add(like(nearest, diameter, deepestMm));
      }
    }
    return List.copyOf(lacked);
  }

  /** How far a cutter's diameter is from another, as a share of the smaller. */
  private static double apart(Tool tool, double diameterMm) {
    double ratio = tool.diameterMm() / diameterMm;
    return Math.max(ratio, 1 / ratio) - 1;
  }

  private static Tool like(Tool model, double diameterMm, double deepestMm) {
    CuttingData run = model.cutting();
    double share = Math.min(1, diameterMm / model.diameterMm());
    return new Tool(
        "end mill " + Numbers.trimmed(diameterMm, 1),
        Form.of(Tool.Shape.FLAT, diameterMm, Math.max(model.fluteLengthMm(), deepestMm)),
        new CuttingData(
            run.rpm(),
            run.feedMmPerMin() * share,
            run.plungeMmPerMin() * share,
            run.stepdownMm() * share,
            run.stepover(),
            run.thinFeedMmPerMin() * share));
  }
}
