/**
 * Narrow places: where the room for a cutter's centre is narrower than about a stepover.
 *
 * <p>In: distances from the walls of a pocket on a lattice and a cutter's radius, mm. Out: {@link
 * plyscape.toolpath.slot.SlotWay}s, each a row of cross-sections of a long narrow place, and {@link
 * plyscape.toolpath.slot.SlotLevels}, the ways to and fro by which one is taken down to its floor.
 *
 * <p>Always true afterwards: no section lets the cutter's centre nearer to a wall than its radius
 * less 0.005 mm; a way takes no more than the bite at once over its whole width nor more than the
 * stepdown beside a wall, and falls no faster than the ramp; the last ways leave the slot at its
 * floor.
 *
 * <p>How: places as far from two walls are found exactly between lattice nodes ({@code
 * BetweenWalls}, {@code CentreLines}), joined into a net ({@code CentreGraph}) and into long ways
 * through it ({@code SlotTrails}, {@code SlotCrossings}), of which the narrow stretches become
 * sections ({@code SlotFinder}, {@code SlotSections}); {@code SlotChoice} picks what still stands.
 * Rings give way only to ways that cover them ({@code SlotCover}).
 */
package plyscape.toolpath.slot;
