package plyscape.layup;

/**
 * What the cut and the finish add to the layup's own errors, and how much clearance is asked for.
 * Immutable.
 *
 * @param minimumMm least clearance of a finished face from its ply's edges
 * @param method how tolerances combine
 * @param zErrorMm plus or minus, of the machine's Z
 * @param sandingMm taken off everywhere after cutting
 * @param sandingToleranceMm plus or minus
 * @param top what happens to the top ply
 * @param minimumFloorMm least wood left under the deepest cut
 */
public record CutAllowance(
    double minimumMm,
    Method method,
    double zErrorMm,
    double sandingMm,
    double sandingToleranceMm,
    Top top,
    double minimumFloorMm) {}
