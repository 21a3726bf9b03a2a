/**
 * From ordered pieces to moves of the machine.
 *
 * <p>In: pieces in cutting order ({@link plyscape.toolpath.motion.PassCutter}) and the {@link
 * plyscape.toolpath.lattice.Stock}, which is cut as they come. Out: passes of {@link
 * plyscape.machine.Move}s at safe height between each other, feeds in mm/min, arcs where they fit.
 *
 * <p>Always true afterwards: a rapid goes only over or through what is cut away ({@code Clearway}),
 * aslant where that is sooner ({@code RapidHop}); the way into standing wood is a ramp no steeper
 * than asked, or straight down where there is no room for one; lifts off walls leave them first
 * ({@code WallLead}); a stretch that takes more than the stepover goes at less feed ({@code
 * WidthFeed}); arcs stay within 0.005 mm of the lines they stand for, 0.002 on the side of a wall
 * ({@link plyscape.toolpath.motion.ArcFitter}); a piece along a wall with more than a stepdown
 * under it is cut to its floor in one visit where that is sooner ({@code StretchCutter}), its last
 * way flat; drops at turns are spread over open ground ({@code OpenTurns}).
 *
 * <p>Decides nothing about which pieces or in which order. Uses {@code cover}, {@code ring}, {@code
 * lattice}, {@code task}, {@code machine}.
 */
package plyscape.toolpath.motion;
