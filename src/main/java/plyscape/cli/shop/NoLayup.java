package plyscape.cli.shop;

import plyscape.fault.JobFault;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.PlyDepth;
import plyscape.layup.Shelf;
import plyscape.shop.LayupSearch;
import plyscape.shop.Proposal;
import plyscape.text.Template;

/** Why no layup was found on a shelf, with the order that comes nearest, and what would help. */
final class NoLayup {

  private final Shelf shelf;
  private final int plies;
  private final CutAllowance allowance;
  private final LayupSearch.Outcome outcome;

  /** Of a search that proposes nothing. */
  NoLayup(Shelf shelf, int plies, CutAllowance allowance, LayupSearch.Outcome outcome) {
    this.shelf = shelf;
    this.plies = plies;
    this.allowance = allowance;
    this.outcome = outcome;
  }

  /** The fault, by the first reason that holds. */
  JobFault fault(boolean inOrder) {
    if (!outcome.proven()) {
      return new JobFault(
          Template.fill(
              "no layup was found among the first %d beginnings; the search was broken off there",
              outcome.looked()),
          "fewer plies or fewer kinds of veneer would do");
    }
    if (inOrder && outcome.bestFloorMm() >= allowance.minimumFloorMm() - 1e-9) {
      return new JobFault(
          Template.fill(
              "reliable layups of %d plies exist, but none with the colours in the order of the"
                  + " file",
              plies),
          "leave --in-order out, or change the order of the veneers");
    }
    if (outcome.bestFloorMm() > Double.NEGATIVE_INFINITY) {
      return thinFloor();
    }
    return outcome.nearest() == null ? tooFew() : unreliable(outcome.nearest());
  }

  private JobFault thinFloor() {
    return new JobFault(
        Template.fill(
            "reliable layups of %s plies leave at most %.2f mm of wood under the deepest cut,"
                + " less than minimum_floor %.2f",
            plies, outcome.bestFloorMm(), allowance.minimumFloorMm()),
        "put a thicker sheet on the shelf for the bottom, or lower --minimum-floor");
  }

  private JobFault tooFew() {
    return new JobFault(
        Template.fill(
            "%d plies with the colours that the zones want leave fewer than two colours for the"
                + " terrain, or too few sheets",
            plies),
        "more colours on the shelf, more plies or fewer zones would do");
  }

  private JobFault unreliable(Proposal nearest) {
    PlyDepth worst = worst(nearest);
    return new JobFault(
        Template.fill(
            "no order of these sheets is reliable at every ply that shows; the best balanced one"
                + " still has ply %s (%s, %.2f mm) with %.3f mm of clearance where %.3f is needed",
            worst.ply().number(),
            worst.ply().name(),
            worst.ply().thicknessMm(),
            worst.availableMm(),
            worst.neededMm()),
        Template.fill(
            "thicker sheets, tighter tolerances, a flatter panel (flatness %.3t) or fewer plies"
                + " would help",
            shelf.flatnessMm()));
  }

  /** The ply with the least clearance for its need, of those that show. */
  private PlyDepth worst(Proposal nearest) {
    PlyDepth worst = null;
    for (PlyDepth d : DepthModel.depths(nearest.layup(), allowance, true)) {
      if (nearest.places().get(d.ply().number() - 1).role().shows()
          && (worst == null
              || d.availableMm() / d.neededMm() < worst.availableMm() / worst.neededMm())) {
        worst = d;
      }
    }
    return worst;
  }
}
