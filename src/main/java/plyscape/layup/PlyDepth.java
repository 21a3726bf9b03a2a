package plyscape.layup;

/**
 * Where one ply lies in the pressed panel and how it is cut; depths in mm, positive down from the
 * top face. Immutable.
 *
 * @param ply the ply
 * @param topMm depth of its top
 * @param bottomMm depth of its bottom
 * @param topToleranceMm plus or minus on the top boundary, from the layup and measurements alone
 * @param bottomToleranceMm the same for the bottom boundary
 * @param targetMm depth to which a region of this ply is cut
 * @param neededTopMm needed clearance at the top edge
 * @param neededBottomMm needed clearance at the bottom edge
 * @param risk probability that a face aimed at this ply is not inside it
 */
public record PlyDepth(
    Ply ply,
    double topMm,
    double bottomMm,
    double topToleranceMm,
    double bottomToleranceMm,
    double targetMm,
    double neededTopMm,
    double neededBottomMm,
    double risk) {

  /** The same with another risk. */
  PlyDepth withRisk(double other) {
    return new PlyDepth(
        ply,
        topMm,
        bottomMm,
        topToleranceMm,
        bottomToleranceMm,
        targetMm,
        neededTopMm,
        neededBottomMm,
        other);
  }

  /** Mid-ply depth. */
  public double midMm() {
    return (topMm + bottomMm) / 2;
  }

  /** Half the ply's thickness in the pressed panel. */
  public double availableMm() {
    return (bottomMm - topMm) / 2;
  }

  /** The larger of the two edges' needs. */
  public double neededMm() {
    return Math.max(neededTopMm, neededBottomMm);
  }

  /**
   * Whether the available clearance covers the need at both edges; sums of decimals are off by
   * rounding, which doesn't count.
   */
  public boolean reliable() {
    return availableMm() >= neededMm() - 1e-9;
  }
}
