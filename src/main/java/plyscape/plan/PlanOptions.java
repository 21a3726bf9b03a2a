package plyscape.plan;

/**
 * How a run goes, apart from the job itself. Immutable.
 *
 * @param previewOnly stop after the regions: no toolpaths, no simulation
 * @param strict an unreliable ply that something is assigned to is a fault, not a warning
 * @param acceptThickness take a measured thickness far from the nominal total
 * @param simulationCellMm side of a simulation cell, mm
 */
public record PlanOptions(
    boolean previewOnly, boolean strict, boolean acceptThickness, double simulationCellMm) {

  /** A whole plan with the usual checks. */
  public static PlanOptions usual() {
    return new PlanOptions(false, false, false, 0.1);
  }
}
