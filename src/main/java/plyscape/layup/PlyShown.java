package plyscape.layup;

/**
 * What holds of a ply over all places where it shows. Immutable.
 *
 * @param leastTargetMm shallowest target depth there
 * @param mostTargetMm deepest target depth there
 * @param neededWorstMm greatest clearance needed at an edge
 * @param worstAt where that is
 * @param reliable whether the clearance is enough everywhere, for faces that sanding doesn't reach
 *     as they are cut too
 * @param risk of a wrong colour, mean over the area
 * @param unsandedShare of the area that sanding may not reach
 * @param floor least wood under it
 */
public record PlyShown(
    double leastTargetMm,
    double mostTargetMm,
    double neededWorstMm,
    PanelPoint worstAt,
    boolean reliable,
    double risk,
    double unsandedShare,
    LeastFloor floor) {}
