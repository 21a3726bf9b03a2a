package plyscape.layup.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import plyscape.fault.Place;
import plyscape.layup.Bottoms;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.MeasuredPlace;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;
import plyscape.layup.Spot;

/**
 * Which ply's bottom, measured where on the panel's edge, would lower the expected area of wrong
 * colour most, everything else as it is. Immutable.
 *
 * @param where in words, such as {@code the right edge}
 * @param at that place
 * @param plyNumber whose bottom
 * @param before expected share of wrong colour over the places judged
 * @param after the same once it is measured and lies as expected
 */
public record NextMeasurement(
    String where, PanelPoint at, int plyNumber, double before, double after) {

  /** Places judged at most: many candidates are tried at each. */
  private static final int MOST_SPOTS = 150;

  /** Gains below this share of the area aren't worth a walk to the bench. */
  private static final double LEAST_GAIN = 1e-5;

  /**
   * Tries corners and middles of the edges.
   *
   * @param spots places of equal area
   * @param toleranceMm plus or minus of the measurement
   * @return empty where depths are the same everywhere, or nothing helps
   */
  public static Optional<NextMeasurement> of(
      Layup layup, CutAllowance allowance, List<Spot> spots, double toleranceMm) {
    if (!layup.measured().byPlace() || spots.isEmpty()) {
      return Optional.empty();
    }
    List<Spot> few = new ArrayList<>();
    int step = 1 + spots.size() / MOST_SPOTS;
    for (int i = 0; i < spots.size(); i += step) {
      few.add(spots.get(i));
    }
    Depths now = DepthModel.unchecked(layup, allowance);
    double before = risk(now, few);
    NextMeasurement best = null;
    for (Map.Entry<String, PanelPoint> edge : edges(layup.measured().centre()).entrySet()) {
      for (Ply ply : layup.plies()) {
        double depth = now.of(ply.number(), edge.getValue()).bottomMm();
        Layup then = with(layup, edge.getValue(), ply.number(), depth, toleranceMm);
        double after = risk(DepthModel.unchecked(then, allowance), few);
        if (best == null ? after < before - LEAST_GAIN : after < best.after() - LEAST_GAIN) {
          best = new NextMeasurement(edge.getKey(), edge.getValue(), ply.number(), before, after);
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private static Layup with(Layup layup, PanelPoint at, int ply, double depth, double tolerance) {
    List<MeasuredPlace> places = new ArrayList<>(layup.measured().places());
    places.add(
        new MeasuredPlace(
            at,
            new Bottoms(new TreeMap<>(Map.of(ply, depth)), tolerance),
            "",
            Place.file(layup.file())));
    return layup.withMeasured(layup.measured().withPlaces(places));
  }

  private static double risk(Depths depths, List<Spot> spots) {
    double sum = 0;
    for (Spot s : spots) {
      PlyDepth at = depths.of(s.ply(), s.at());
      double cut = Double.isNaN(s.cutMm()) ? at.targetMm() : s.cutMm();
      double sanded = depths.risk(s.ply(), s.at(), cut, true);
      sum += s.sanded() ? sanded : Math.max(sanded, depths.risk(s.ply(), s.at(), cut, false));
    }
    return sum / spots.size();
  }

  private static Map<String, PanelPoint> edges(PanelPoint centre) {
    double w = 2 * centre.xMm();
    double h = 2 * centre.yMm();
    Map<String, PanelPoint> out = new java.util.LinkedHashMap<>();
    out.put("the left edge", new PanelPoint(0, h / 2));
    out.put("the right edge", new PanelPoint(w, h / 2));
    out.put("the lower edge", new PanelPoint(w / 2, 0));
    out.put("the upper edge", new PanelPoint(w / 2, h));
    out.put("the lower left corner", new PanelPoint(0, 0));
    out.put("the lower right corner", new PanelPoint(w, 0));
    out.put("the upper left corner", new PanelPoint(0, h));
    out.put("the upper right corner", new PanelPoint(w, h));
    return out;
  }
}
