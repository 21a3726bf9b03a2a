package plyscape.render;

import java.util.List;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/**
 * Colours of a map of the risk: those of the steps, or, when all that shows is in one step, shades
 * of that step's colour by how much of the clearance that there is the tolerances need.
 */
final class RiskShades {

  /** Share of white over the palest ply. */
  private static final double PALEST = 0.7;

  private final RiskStep only;
  private final double least;
  private final double most;

  private RiskShades(RiskStep only, double least, double most) {
    this.only = only;
    this.least = least;
    this.most = most;
  }

  /** For the plies that show on a panel. */
  static RiskShades of(Landscape plan) {
    return of(
        plan.tiling().exposed().keySet().stream().map(number -> plan.depths().of(number)).toList());
  }

  /** For plies, at least one. */
  static RiskShades of(List<PlyDepth> shown) {
    double[] shares = shown.stream().mapToDouble(RiskShades::neededShare).sorted().toArray();
    RiskStep first = RiskStep.of(shown.get(0).risk());
    boolean one = shown.stream().allMatch(ply -> RiskStep.of(ply.risk()) == first);
    double least = shares[0];
    double most = shares[shares.length - 1];
    return new RiskShades(one ? first : null, least, most);
  }

  /** 0xRRGGBB of a ply. */
  int of(PlyDepth ply) {
    if (only == null) {
      return RiskStep.of(ply.risk()).rgb();
    }
    double from = most > least ? (neededShare(ply) - least) / (most - least) : 1;
    return Colours.mix(only.rgb(), 0xffffff, PALEST * (1 - from));
  }

  /** What the shades mean; nothing where the steps' colours are shown. */
  List<String> words() {
    if (only == null) {
      return List.of();
    }
    return most > least
        ? List.of(
            "All of it is in one step. Its shades tell how much of",
            "the clearance is needed: pale "
                + Numbers.fixed(100 * least, 0)
                + " %, dark "
                + Numbers.fixed(100 * most, 0)
                + " %.")
        : List.of("All of it is in one step.");
  }

  private static double neededShare(PlyDepth ply) {
    return ply.availableMm() > 0 ? ply.neededMm() / ply.availableMm() : 1;
  }
}
