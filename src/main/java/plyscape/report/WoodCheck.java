package plyscape.report;

import java.util.ArrayList;
import java.util.List;
import plyscape.layup.Ply;
import plyscape.plan.Plan;
import plyscape.text.Numbers;

/**
 * What a look at the layup tells before pressing: balance after the Wood Handbook's chapter on
 * panels (odd, the same from both sides in wood, thickness and grain; neighbours crossed), colours
 * that are hard to tell apart, wood left under the deepest cut.
 */
final class WoodCheck {

  /**
   * Colours nearer than this in CIE L*a*b* are hard to tell apart on wood (common practice, no
   * source).
   */
  private static final double NEAR = 12;

  private WoodCheck() {}

  static List<Finding> of(Plan plan) {
    List<Ply> plies = plan.job().layup().plies();
    List<Finding> out = new ArrayList<>();
    out.add(
        new Finding(
            plies.size() % 2 == 1,
            plies.size()
                + " plies: "
                + (plies.size() % 2 == 1
                    ? "odd, as a flat panel wants."
                    : "even, so the panel may bow.")));
    out.add(balance(plies));
    out.add(crossed(plies));
    out.addAll(colours(plan));
    double deepest = plan.tiling().pockets().isEmpty() ? 0 : plan.deepestCutMm();
    out.add(
        new Finding(
            plan.thicknessMm() - deepest >= plan.job().allowance().minimumFloorMm(),
            Numbers.fixed(plan.thicknessMm() - deepest, 2)
                + " mm of wood are left under the deepest cut."));
    return List.copyOf(out);
  }

  private static Finding balance(List<Ply> plies) {
    List<String> pairs = new ArrayList<>();
    for (int i = 0; i < plies.size() / 2; i++) {
      Ply upper = plies.get(i);
      Ply lower = plies.get(plies.size() - 1 - i);
      boolean same =
          Math.abs(upper.thicknessMm() - lower.thicknessMm()) < 1e-9
              && Math.abs(Math.IEEEremainder(upper.grainDeg() - lower.grainDeg(), 180)) < 1;
      if (!same) {
        pairs.add(upper.number() + " and " + lower.number());
      }
    }
    return pairs.isEmpty()
        ? new Finding(true, "Thickness and grain are the same from both sides.")
        : new Finding(
            false,
            "Thickness or grain differ between plies "
                + String.join(", ", pairs)
                + ": the panel may bow.");
  }

  private static Finding crossed(List<Ply> plies) {
    List<String> pairs = new ArrayList<>();
    for (int i = 0; i + 1 < plies.size(); i++) {
      double angle =
          Math.abs(Math.IEEEremainder(plies.get(i).grainDeg() - plies.get(i + 1).grainDeg(), 180));
      if (Math.abs(angle - 90) > 15) {
        pairs.add(plies.get(i).number() + " and " + plies.get(i + 1).number());
      }
    }
    return pairs.isEmpty()
        ? new Finding(true, "The grain of neighbours is crossed.")
        : new Finding(
            false, "The grain isn't crossed between plies " + String.join(", ", pairs) + ".");
  }

  private static List<Finding> colours(Plan plan) {
    List<Finding> out = new ArrayList<>();
    List<Integer> shown = List.copyOf(plan.tiling().exposed().keySet());
    for (int i = 0; i < shown.size(); i++) {
      for (int j = i + 1; j < shown.size(); j++) {
        Ply a = plan.depths().get(shown.get(i) - 1).ply();
        Ply b = plan.depths().get(shown.get(j) - 1).ply();
        double distance = Lab.distance(a.rgb(), b.rgb());
        if (distance < NEAR) {
          out.add(
              new Finding(
                  false,
                  a.name()
                      + " and "
                      + b.name()
                      + " are hard to tell apart (colour distance "
                      + Numbers.fixed(distance, 1)
                      + ")."));
        }
      }
    }
    if (out.isEmpty()) {
      out.add(new Finding(true, "All colours that show can be told apart."));
    }
    return out;
  }
}
