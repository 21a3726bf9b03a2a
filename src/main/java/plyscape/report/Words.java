package plyscape.report;

import plyscape.layup.FaceWindow;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/** Chances and shares as people say them. */
final class Words {

  private Words() {}

  /** Below this, blunders rule (contract.md, section 3). */
  private static final double LEAST_CHANCE = 1e-6;

  /** {@code 1 in 25 000}; {@code none} for 0; chances below 1e-6 aren't told apart. */
  static String chance(double risk) {
    if (risk == 0) {
      return "none";
    }
    if (risk < LEAST_CHANCE) {
      return "below 1 in " + grouped(Math.round(1 / LEAST_CHANCE));
    }
    return "1 in " + grouped(Math.max(Math.round(1 / risk), 1));
  }

  /** {@code 25 000}: digits in threes. */
  static String grouped(long value) {
    StringBuilder digits = new StringBuilder(Long.toString(value));
    for (int i = digits.length() - 3; i > 0; i -= 3) {
      digits.insert(i, ' ');
    }
    return digits.toString();
  }

  /** {@code 1.290}, {@code 0.947 to 1.626} of faces that follow the terrain, {@code uncut}. */
  static String cut(Landscape plan, int plyNumber) {
    FaceWindow cut = plan.cutMm(plyNumber);
    if (cut.lowerMm() <= 0) {
      return "uncut";
    }
    String deepest = Numbers.fixed(cut.lowerMm(), 3);
    return cut.open() ? Numbers.fixed(cut.upperMm(), 3) + " to " + deepest : deepest;
  }

  /** {@code 12.3 %} of a share from 0 to 1; small ones keep two places. */
  static String percent(double share) {
    return Numbers.fixed(100 * share, share > 0 && share < 0.001 ? 3 : 1) + " %";
  }
}
