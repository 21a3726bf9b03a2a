package plyscape.report.json;

import java.util.List;
import plyscape.plan.Landscape;

/** The range of elevations that a ply takes from the terrain. */
public final class Breaks {

  private Breaks() {}

  /**
   * {low, high} in metres; the outermost plies end at the terrain's own least and greatest. Null
   * for a ply that takes none.
   */
  public static double[] ofPly(Landscape plan, int plyNumber) {
    List<Double> breaks = plan.bands().breaksM();
    int i = plan.bands().plyNumbers().indexOf(plyNumber);
    if (i < 0) {
      return null;
    }
    double high = i == 0 ? plan.terrain().zmaxM() : breaks.get(i - 1);
    double low = i == breaks.size() ? plan.terrain().zminM() : breaks.get(i);
    return new double[] {low, high};
  }
}
