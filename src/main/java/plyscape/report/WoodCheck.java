package plyscape.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.layup.Layup;
import plyscape.layup.LeastFloor;
import plyscape.layup.Ply;
import plyscape.layup.advice.BalanceCheck;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * What a look at the layup tells before pressing: the rules of {@link BalanceCheck}, colours that
 * are hard to tell apart, wood left under the deepest cut.
 */
final class WoodCheck {

  /**
   * Colours nearer than this in CIE L*a*b* are hard to tell apart on wood (common practice, no
   * source).
   */
  private static final double NEAR = 12;

  private WoodCheck() {}

  static List<Finding> of(Landscape plan) {
    Layup layup = plan.job().layup();
    List<BalanceCheck.Finding> broken = BalanceCheck.of(layup);
    List<Finding> out = new ArrayList<>();
    for (BalanceCheck.Finding rule : broken) {
      String what = rule.what().substring(0, 1).toUpperCase(Locale.ROOT) + rule.what().substring(1);
      out.add(new Finding(false, what + "; " + rule.mend() + "."));
    }
    kept(out, broken, "even", layup.plies().size() + " plies: odd, as a flat panel wants.");
    kept(out, broken, "unbalanced", "Wood, thickness and grain are the same from both sides.");
    kept(out, broken, "parallel", "The grain of neighbours is crossed.");
    out.addAll(colours(plan));
    out.add(floor(plan));
    return List.copyOf(out);
  }

  /** Least wood under a cut; where depths go by place, with the place. */
  private static Finding floor(Landscape plan) {
    LeastFloor least = plan.leastFloor();
    return new Finding(
        least.floorMm() >= plan.job().allowance().minimumFloorMm() - 1e-9,
        Numbers.fixed(least.floorMm(), 2)
            + " mm of wood are left under the deepest cut"
            + (least.at() == null ? "." : ", at " + least.at() + "."));
  }

  private static void kept(
      List<Finding> out, List<BalanceCheck.Finding> broken, String code, String text) {
    if (broken.stream().noneMatch(rule -> rule.code().equals(code))) {
      out.add(new Finding(true, text));
    }
  }

  private static List<Finding> colours(Landscape plan) {
    List<Finding> out = new ArrayList<>();
    List<Integer> shown = List.copyOf(plan.tiling().exposed().keySet());
    for (int i = 0; i < shown.size(); i++) {
      for (int j = i + 1; j < shown.size(); j++) {
        Ply a = plan.depths().of(shown.get(i)).ply();
        Ply b = plan.depths().of(shown.get(j)).ply();
        double distance = Lab.distance(a.rgb(), b.rgb());
        if (distance < NEAR) {
          out.add(
              new Finding(
                  false,
                  Template.fill(
                      "%s and %s are hard to tell apart (colour distance %.1f).",
                      a.name(), b.name(), distance)));
        }
      }
    }
    if (out.isEmpty()) {
      out.add(new Finding(true, "All colours that show can be told apart."));
    }
    return out;
  }
}
