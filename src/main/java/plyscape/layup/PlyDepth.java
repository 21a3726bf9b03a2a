package plyscape.layup;

/**
 * Where one ply lies in the pressed panel and how it is cut; depths in mm, positive down from the
 * top face, at one place. Immutable.
 *
 * @param top its upper edge
 * @param bottom its lower edge
 * @param targetMm depth to which a region of this ply is cut
 * @param ownRisk probability that a face aimed at this ply is not inside it, at this place
 * @param shown what holds over all places where it shows; null as long as that isn't known, or when
 *     it shows nowhere
 */
public record PlyDepth(
    Ply ply, Boundary top, Boundary bottom, double targetMm, double ownRisk, PlyShown shown) {

  /** Of a place, whatever shows where. */
  public PlyDepth(Ply ply, Boundary top, Boundary bottom, double targetMm, double ownRisk) {
    this(ply, top, bottom, targetMm, ownRisk, null);
  }

  /** The same, judged over all places where it shows. */
  PlyDepth shown(PlyShown over) {
    return new PlyDepth(ply, top, bottom, targetMm, ownRisk, over);
  }

  /** Depth of its top. */
  public double topMm() {
    return top.depthMm();
  }

  /** Depth of its bottom. */
  public double bottomMm() {
    return bottom.depthMm();
  }

  /** Plus or minus on the top. */
  public double topToleranceMm() {
    return top.toleranceMm();
  }

  /** Plus or minus on the bottom. */
  public double bottomToleranceMm() {
    return bottom.toleranceMm();
  }

  /** Clearance needed at the top. */
  public double neededTopMm() {
    return top.neededMm();
  }

  /** Clearance needed at the bottom. */
  public double neededBottomMm() {
    return bottom.neededMm();
  }

  /** Mid-ply depth. */
  public double midMm() {
    return (topMm() + bottomMm()) / 2;
  }

  /** Half the ply's thickness in the pressed panel. */
  public double availableMm() {
    return (bottomMm() - topMm()) / 2;
  }

  /** The larger of the two edges' needs. */
  public double neededMm() {
    return Math.max(neededTopMm(), neededBottomMm());
  }

  /** Risk of a wrong colour: mean over the area where it shows, or at this place. */
  public double risk() {
    return shown == null ? ownRisk : shown.risk();
  }

  /** Whether the available clearance covers the need: wherever it shows, or at this place. */
  public boolean reliable() {
    return shown == null ? reliableHere() : shown.reliable();
  }

  /**
   * Whether the available clearance covers the need at both edges at this place; sums of decimals
   * are off by rounding, which doesn't count.
   */
  boolean reliableHere() {
    return availableMm() >= neededMm() - 1e-9;
  }
}
