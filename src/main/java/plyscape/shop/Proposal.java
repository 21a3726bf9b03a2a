package plyscape.shop;

import java.util.Comparator;
import java.util.List;
import plyscape.layup.Layup;

/**
 * A layup that the shelf allows. Immutable.
 *
 * @param layup the plies, grain crossed from ply to ply, nothing measured
 * @param places what each ply is for, top to bottom
 * @param unbalanced pairs about the centre that differ in wood or thickness
 * @param spare plies above the bottom one that show nowhere, because the shelf has no colour left
 *     for them
 * @param worstRatio least available over needed clearance of the plies that show
 * @param fit 1 when the terrain's plies all show the same area, down to 0
 * @param inversions pairs of plies that show and lie the other way round than on the shelf
 */
public record Proposal(
    Layup layup,
    List<Place> places,
    int unbalanced,
    int spare,
    double worstRatio,
    double fit,
    int inversions) {

  /** Clearance beyond twice the need brings nothing more; up to there it counts before the fit. */
  static final double ENOUGH = 2;

  /**
   * Best first: balance, then colours shown, then clearance up to twice the need, then fit, then
   * the shelf's order.
   */
  static final Comparator<Proposal> BEST_FIRST =
      Comparator.comparingInt(Proposal::unbalanced)
          .thenComparingInt(Proposal::spare)
          .thenComparing(Comparator.comparingDouble(Proposal::countedRatio).reversed())
          .thenComparing(Comparator.comparingDouble(Proposal::countedFit).reversed())
          .thenComparingInt(Proposal::inversions);

  /** What a ply is for. */
  public enum Role {
    TERRAIN,
    ZONE,
    SPARE,
    FLOOR;

    /** Whether such a ply is seen on the finished panel. */
    public boolean shows() {
      return this == TERRAIN || this == ZONE;
    }
  }

  /**
   * A ply's use.
   *
   * @param role what for
   * @param zone name of its zone, or ""
   * @param ratio available over needed clearance
   * @param share of the ground, for a terrain ply
   */
  public record Place(Role role, String zone, double ratio, double share) {}

  /** Rounded, so that rounding errors don't decide. */
  double countedRatio() {
    return Math.round(Math.min(worstRatio, ENOUGH) * 1e9);
  }

  double countedFit() {
    return Math.round(fit * 1e9);
  }
}
