package plyscape.plan;

import java.util.Set;

/**
 * How a run goes, apart from the job itself. Immutable.
 *
 * @param previewOnly stop after the regions: no toolpaths, no simulation
 * @param strict an unreliable ply that something is assigned to is a fault, not a warning
 * @param accepted what is no fault this time
 * @param simulationCellMm side of a simulation cell, mm
 */
public record PlanOptions(
    boolean previewOnly, boolean strict, Set<Acceptance> accepted, double simulationCellMm) {

  /** Usual side of a simulation cell, mm. */
  public static final double USUAL_CELL_MM = 0.1;

  /** Checks the cell and copies the set. */
  public PlanOptions {
    if (!(simulationCellMm > 0)) {
      throw new IllegalArgumentException("simulation cell " + simulationCellMm);
    }
    accepted = Set.copyOf(accepted);
  }

  /** A preview with the usual checks. */
  public static PlanOptions preview(Set<Acceptance> accepted) {
    return new PlanOptions(true, false, accepted, USUAL_CELL_MM);
  }

  /** Whether the user takes this upon themselves. */
  public boolean accepts(Acceptance what) {
    return accepted.contains(what);
  }
}
