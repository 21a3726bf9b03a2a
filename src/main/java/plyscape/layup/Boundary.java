package plyscape.layup;

/**
 * Edge of a ply in the pressed panel, mm. Immutable.
 *
 * @param depthMm below the top face
 * @param toleranceMm plus or minus, from the layup and measurements alone
 * @param neededMm clearance that a face needs from it
 */
public record Boundary(double depthMm, double toleranceMm, double neededMm) {}
