package plyscape.layup.advice;

import java.util.ArrayList;
import java.util.List;
import plyscape.layup.Layup;
import plyscape.layup.Ply;
import plyscape.layup.Wood;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * The trade's rules for a panel that stays flat: an odd number of plies, neighbours' grain crossed,
 * and the layup its own mirror image in wood, thickness and grain (<i>Wood Handbook</i>, chapters
 * 11 and 12).
 */
public final class BalanceCheck {

  /** Sheets sold as the same thickness differ by about this much. */
  public static final double THICKNESS_SLACK_MM = 0.02;

  private static final double ANGLE_SLACK_DEG = 5;

  private BalanceCheck() {}

  /**
   * One rule that is broken.
   *
   * @param code {@code even}, {@code parallel}, {@code unbalanced}
   * @param what what is off
   * @param mend what would mend it
   */
  public record Finding(String code, String what, String mend) {}

  /** What is off in a layup, and what would mend it; empty when all is well. */
  public static List<Finding> of(Layup layup) {
    List<Ply> plies = layup.plies();
    List<Finding> found = new ArrayList<>();
    if (plies.size() % 2 == 0) {
      found.add(
          new Finding(
              "even",
              plies.size() + " plies: an even number has no centre ply to balance about",
              "add a ply under the panel or leave one out"));
    }
    parallel(plies, found);
    unbalanced(plies, found);
    return List.copyOf(found);
  }

  private static void parallel(List<Ply> plies, List<Finding> found) {
    for (int i = 0; i + 1 < plies.size(); i++) {
      double angle = between(plies.get(i).grainDeg(), plies.get(i + 1).grainDeg());
      if (Math.abs(angle - 90) > ANGLE_SLACK_DEG) {
        found.add(
            new Finding(
                "parallel",
                Template.fill(
                    "the grain of %s and %s crosses at %.1t degrees, not 90",
                    name(plies.get(i)), name(plies.get(i + 1)), angle),
                Template.fill(
                    "turn %s to %.1t degrees (and mind its other neighbour)",
                    name(plies.get(i + 1)), (plies.get(i).grainDeg() + 90) % 180)));
      }
    }
  }

  private static void unbalanced(List<Ply> plies, List<Finding> found) {
    String swap = swapThatBalances(plies);
    for (int i = 0; i < plies.size() / 2; i++) {
      Ply upper = plies.get(i);
      Ply lower = plies.get(plies.size() - 1 - i);
      String off = off(upper, lower);
      if (!off.isEmpty()) {
        found.add(
            new Finding(
                "unbalanced",
                Template.fill(
                    "%s and %s face each other across the centre but differ in %s",
                    name(upper), name(lower), off),
                swap.isEmpty() ? mend(upper, lower) : swap));
      }
    }
  }

  /** Pairs of plies about the centre that differ. */
  public static int unbalancedPairs(List<Ply> plies) {
    int pairs = 0;
    for (int i = 0; i < plies.size() / 2; i++) {
      pairs += off(plies.get(i), plies.get(plies.size() - 1 - i)).isEmpty() ? 0 : 1;
    }
    return pairs;
  }

  private static String off(Ply a, Ply b) {
    List<String> off = new ArrayList<>();
    if (Math.abs(a.thicknessMm() - b.thicknessMm()) > THICKNESS_SLACK_MM + 1e-9) {
      off.add("thickness (" + mm(a.thicknessMm()) + " and " + mm(b.thicknessMm()) + " mm)");
    }
    if (!Wood.alike(a.wood(), b.wood())) {
      off.add(
          "wood ("
              + (a.wood().isBlank() ? "none given" : a.wood())
              + " and "
              + (b.wood().isBlank() ? "none given" : b.wood())
              + ")");
    }
    if (between(a.grainDeg(), b.grainDeg()) > ANGLE_SLACK_DEG) {
      off.add(Template.fill("grain (%.1t and %.1t degrees)", a.grainDeg(), b.grainDeg()));
    }
    return String.join(", ", off);
  }

  private static String mend(Ply upper, Ply lower) {
    List<String> mend = new ArrayList<>();
    if (Math.abs(upper.thicknessMm() - lower.thicknessMm()) > THICKNESS_SLACK_MM + 1e-9
        || !Wood.alike(upper.wood(), lower.wood())) {
      mend.add(
          Template.fill(
              "take for %s a sheet of %s mm%s, as %s",
              name(lower),
              mm(upper.thicknessMm()),
              upper.wood().isBlank() ? "" : " " + upper.wood(),
              name(upper)));
    }
    if (between(upper.grainDeg(), lower.grainDeg()) > ANGLE_SLACK_DEG) {
      mend.add("turn " + name(lower) + " to " + Numbers.trimmed(upper.grainDeg(), 1) + " degrees");
    }
    return String.join(", ", mend);
  }

  /**
   * A swap of two plies (each keeping the grain of its place) after which all pairs match, in
   * words, or "".
   */
  private static String swapThatBalances(List<Ply> plies) {
    if (unbalancedPairs(plies) == 0) {
      return "";
    }
    for (int i = 0; i < plies.size(); i++) {
      for (int j = i + 1; j < plies.size(); j++) {
        List<Ply> swapped = new ArrayList<>(plies);
        swapped.set(i, at(plies.get(j), plies.get(i).grainDeg()));
        swapped.set(j, at(plies.get(i), plies.get(j).grainDeg()));
        if (unbalancedPairs(swapped) == 0) {
          return Template.fill(
              "swap %s and %s: that balances the whole panel",
              name(plies.get(i)), name(plies.get(j)));
        }
      }
    }
    return "";
  }

  private static Ply at(Ply ply, double grainDeg) {
    return new Ply(
        ply.number(),
        ply.name(),
        ply.rgb(),
        ply.thicknessMm(),
        ply.toleranceMm(),
        grainDeg,
        ply.wood());
  }

  /** Angle between two grain directions, 0 to 90 degrees. */
  private static double between(double a, double b) {
    double angle = Math.abs(a - b) % 180;
    return Math.min(angle, 180 - angle);
  }

  private static String name(Ply ply) {
    return "ply " + ply.number() + " (" + ply.name() + ")";
  }

  private static String mm(double value) {
    return Numbers.fixed(value, 2);
  }
}
