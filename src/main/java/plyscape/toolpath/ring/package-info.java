/**
 * Ways of a cutter's centre at a fixed distance from a pocket's walls.
 *
 * <p>In: a pocket with its distances ({@link plyscape.toolpath.ring.LevelField} holds both), a
 * cutter's radius. Out: {@link plyscape.toolpath.lattice.Ring}s, index 0 along the wall, higher
 * inside; and {@link plyscape.toolpath.ring.Piece}s, the stretches of rings that are cut, climbing
 * unless turned.
 *
 * <p>Always true afterwards: a point of a wall ring, and of the lines between its points, is never
 * nearer to a wall than the radius less 0.005 mm; in corners it leads to where the cutter touches
 * both walls ({@code OffsetCorners}, {@code CornerWays}). Where the cutter fits by less than a
 * lattice step, short ways stand in ({@code TightPlaces}, {@code TightSpots}). Inner rings are
 * drawn on a field that may be smoothed: they are even, not exact, and keep off walls by the
 * allowance asked for.
 *
 * <p>Which of the rings are needed is decided in {@code cover}. Uses {@code lattice} and {@code
 * task}.
 */
package plyscape.toolpath.ring;
