package plyscape.shop;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import plyscape.layup.CutAllowance;
import plyscape.layup.Method;
import plyscape.layup.Shelf;
import plyscape.shop.SheetKinds.Kind;

/**
 * Layups from the sheets on the shelf: all orders of kinds of sheets are gone through from the top
 * down, those that can't come among the best are cut off early (branch and bound), so that what is
 * found is the best there is, unless the search is broken off at its limit, which the outcome says.
 *
 * <p>Rules: an odd number of plies, grain crossed; as few unbalanced pairs as possible; every ply
 * that shows is reliable; the bottom ply is the floor and shows nowhere; each colour shows in one
 * ply only; plies that show nowhere (spare ones) are as few as possible; a zone's colour isn't used
 * by the terrain; where a kind has more colours than places, the first of the shelf are taken.
 * Tolerances add up from the top, as in a panel that isn't measured yet.
 */
public final class LayupSearch {

  /** Beginnings of orders looked at before the search is broken off: some ten seconds. */
  private static final long MOST_LOOKED = 15_000_000;

  private final Shelf shelf;
  private final int plies;
  private final CutAllowance allowance;
  private final HeightShares heights;
  private final int keep;
  private final SheetKinds sheets;
  private final int[] kindAt;
  private final int[] taken;
  private final double[] topMm;
  private final double[] ratioAt;
  private final int[] shown;
  private final boolean[] showsAt;
  private final boolean[] zoneAt;
  private final List<Proposal> best = new ArrayList<>();
  private long looked;
  private boolean broken;
  private int wantedUnbalanced;
  private int wantedSpare;
  private double leastRatio;
  private boolean inOrder;
  private double bestFloorMm = Double.NEGATIVE_INFINITY;

  private LayupSearch(
      Shelf shelf, int plies, CutAllowance allowance, HeightShares heights, int keep) {
    this.shelf = shelf;
    this.plies = plies;
    this.allowance = allowance;
    this.heights = heights;
    this.keep = keep;
    sheets = new SheetKinds(shelf);
    kindAt = new int[plies];
    taken = new int[sheets.kinds.size()];
    topMm = new double[plies + 1];
    ratioAt = new double[plies];
    shown = new int[taken.length];
    showsAt = new boolean[plies];
    zoneAt = new boolean[plies];
  }

  /**
   * What was found.
   *
   * @param proposals best first; empty when nothing fits
   * @param proven whether nothing better can exist by the rules
   * @param looked orders and beginnings of orders looked at
   * @param nearest when nothing fits: the order whose worst clearance is best, reliable or not;
   *     else null
   * @param bestFloorMm when nothing fits: the most wood under the deepest cut of all orders that
   *     were reliable, or minus infinity
   */
  public record Outcome(
      List<Proposal> proposals,
      boolean proven,
      long looked,
      Proposal nearest,
      double bestFloorMm) {}

  /**
   * Searches.
   *
   * @param plies an odd number from 3, no more than there are sheets
   * @param heights of the terrain
   * @param keep how many proposals are wanted
   * @param inOrder whether the plies that show must lie in the shelf's order, zones' too
   */
  public static Outcome of(
      Shelf shelf,
      int plies,
      CutAllowance allowance,
      HeightShares heights,
      int keep,
      boolean inOrder) {
    LayupSearch search = new LayupSearch(shelf, plies, allowance, heights, keep);
    search.leastRatio = 1 - 1e-9;
    search.inOrder = inOrder;
    search.levels();
    if (!search.best.isEmpty() || search.broken) {
      return new Outcome(
          List.copyOf(search.best), !search.broken, search.looked, null, search.bestFloorMm);
    }
    LayupSearch relaxed = new LayupSearch(shelf, plies, allowance, heights, 1);
    relaxed.levels();
    return new Outcome(
        List.of(),
        true,
        search.looked,
        relaxed.best.isEmpty() ? null : relaxed.best.get(0),
        search.bestFloorMm);
  }

  /**
   * Fewer unbalanced pairs always come first, then fewer spare plies, so that the first outcome
   * ends the search.
   */
  private void levels() {
    for (wantedUnbalanced = 0; wantedUnbalanced <= plies / 2; wantedUnbalanced++) {
      for (wantedSpare = 0; wantedSpare <= plies - 3; wantedSpare++) {
        place(0, 0, 0, 0, Double.POSITIVE_INFINITY);
        if (!best.isEmpty() || broken) {
          return;
        }
      }
    }
  }

  /**
   * Chooses the kind of one ply, and whether it shows, and goes on to the next.
   *
   * @param tolerance of its top boundary: squares summed for rss, the plain sum for worst
   */
  private void place(int at, double tolerance, int unbalanced, int spare, double ratio) {
    looked++;
    broken |= looked > MOST_LOOKED;
    if (at == plies) {
      if (unbalanced == wantedUnbalanced && spare == wantedSpare) {
        zones(0, ratio);
      }
      return;
    }
    for (int k = 0; k < taken.length && !broken; k++) {
      Kind kind = sheets.kinds.get(k);
      int mirror = plies - 1 - at;
      int off = unbalanced + (at > mirror && !sheets.alike(k, kindAt[mirror]) ? 1 : 0);
      if (taken[k] == kind.sheets() || off > wantedUnbalanced) {
        continue;
      }
      double below = tolerance + term(kind.toleranceMm());
      ratioAt[at] = kind.thicknessMm() / 2 / needed(below);
      kindAt[at] = k;
      topMm[at + 1] = topMm[at] + kind.thicknessMm() + shelf.glueLine().thicknessMm();
      taken[k]++;
      double next = below + term(shelf.glueLine().toleranceMm());
      if (at == plies - 1) {
        place(at + 1, next, off, spare, ratio);
      } else {
        show(at, k, next, off, spare, ratio);
        if (spare < wantedSpare && wishesStillFit(at)) {
          place(at + 1, next, off, spare + 1, ratio);
        }
      }
      taken[k]--;
    }
  }

  private void show(int at, int kind, double tolerance, int unbalanced, int spare, double ratio) {
    double worst = Math.min(ratio, ratioAt[at]);
    if (shown[kind] == sheets.kinds.get(kind).colours() || worst < leastRatio || hopeless(worst)) {
      return;
    }
    showsAt[at] = true;
    shown[kind]++;
    if (wishesStillFit(at)) {
      place(at + 1, tolerance, unbalanced, spare, worst);
    }
    shown[kind]--;
    showsAt[at] = false;
  }

  /** Whether not even a perfect rest would bring this beginning among those to keep. */
  private boolean hopeless(double ratio) {
    return best.size() == keep
        && Math.round(Math.min(ratio, Proposal.ENOUGH) * 1e9) < best.get(keep - 1).countedRatio();
  }

  private boolean wishesStillFit(int at) {
    int missing = 0;
    for (int k = 0; k < shown.length; k++) {
      missing += Math.max(0, sheets.kinds.get(k).forZones().size() - shown[k]);
    }
    return missing <= plies - 2 - at;
  }

  /** Tries every way to give plies of each kind to the zones that want that kind's colours. */
  private void zones(int kind, double ratio) {
    if (kind == shown.length) {
      finish(ratio);
      return;
    }
    int wanted = sheets.kinds.get(kind).forZones().size();
    List<Integer> places = new ArrayList<>();
    for (int at = 0; at < plies - 1; at++) {
      if (kindAt[at] == kind && showsAt[at]) {
        places.add(at);
      }
    }
    int forTerrain = places.size() - wanted;
    if (forTerrain >= 0 && forTerrain <= sheets.kinds.get(kind).forTerrain().size()) {
      choose(kind, places, 0, wanted, ratio);
    }
  }

  private void choose(int kind, List<Integer> places, int from, int wanted, double ratio) {
    if (wanted == 0) {
      zones(kind + 1, ratio);
      return;
    }
    for (int i = from; i <= places.size() - wanted && !broken; i++) {
      zoneAt[places.get(i)] = true;
      choose(kind, places, i + 1, wanted - 1, ratio);
      zoneAt[places.get(i)] = false;
    }
  }

  private void finish(double ratio) {
    looked++;
    broken |= looked > MOST_LOOKED;
    List<Double> mids = new ArrayList<>();
    int deepest = 0;
    for (int at = 0; at < plies - 1; at++) {
      deepest = showsAt[at] ? at : deepest;
      if (showsAt[at] && !zoneAt[at]) {
        mids.add(midMm(at));
      }
    }
    if (mids.size() < 2) {
      return;
    }
    double total = topMm[plies] - shelf.glueLine().thicknessMm();
    double floor = total - Math.max(0, midMm(deepest) - allowance.sandingMm());
    bestFloorMm = Math.max(bestFloorMm, floor);
    if (leastRatio > 0 && floor < allowance.minimumFloorMm() - 1e-9) {
      return;
    }
    double fit =
        HeightShares.evenness(
            heights.byScale(mids.stream().mapToDouble(Double::doubleValue).toArray()));
    consider(ratio, fit);
  }

  private void consider(double ratio, double fit) {
    if (best.size() == keep) {
      Proposal last = best.get(keep - 1);
      Proposal asGood =
          new Proposal(last.layup(), last.places(), wantedUnbalanced, wantedSpare, ratio, fit, 0);
      if (Proposal.BEST_FIRST.compare(asGood, last) >= 0) {
        return;
      }
    }
    Proposal found =
        new ProposalBuilder(shelf, sheets, heights)
            .build(
                new ProposalBuilder.Order(kindAt, showsAt, zoneAt, ratioAt, topMm),
                new ProposalBuilder.Worth(wantedUnbalanced, wantedSpare, ratio, fit));
    if (inOrder && found.inversions() > 0) {
      return;
    }
    best.add(found);
    Collections.sort(best, Proposal.BEST_FIRST);
    if (best.size() > keep) {
      best.remove(best.size() - 1);
    }
  }

  private double midMm(int at) {
    return topMm[at] + sheets.kinds.get(kindAt[at]).thicknessMm() / 2;
  }

  private double term(double tolerance) {
    return allowance.method() == Method.RSS ? tolerance * tolerance : tolerance;
  }

  /**
   * Needed clearance at a ply's bottom edge, which is the larger of its two as tolerances add up
   * downwards.
   */
  private double needed(double tolerance) {
    double cut =
        term(shelf.flatnessMm())
            + term(allowance.zErrorMm())
            + term(allowance.sandingToleranceMm());
    double sum = tolerance + cut;
    return Math.max(
        Math.max(allowance.minimumMm(), allowance.method() == Method.RSS ? Math.sqrt(sum) : sum),
        1e-12);
  }
}
