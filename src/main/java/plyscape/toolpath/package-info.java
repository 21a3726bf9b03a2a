/**
 * From pockets and cutters to moves.
 *
 * <p>In: one {@link plyscape.toolpath.task.PocketLevel} a ply that is cut, nested, panel mm, depths
 * positive down; tools and machine limits. Out: one {@link plyscape.toolpath.task.ToolRun} a cutter
 * that is used, largest first, each a list of passes of {@link plyscape.machine.Move}s that start
 * and end at safe height.
 *
 * <p>Always true afterwards: a cutter's centre at a depth is never nearer to a wall of the pocket
 * that bounds this depth than its radius less 0.005 mm; a rapid never goes through wood that still
 * stands; no move bites deeper than the tool's stepdown into the wood as it stands then, the
 * outermost 0.05 mm of the cutter aside; the same input gives the same moves.
 *
 * <p>This package decides which cutters are used ({@code ToolChoice}) and which pieces each of them
 * cuts ({@code ToolPlanner}); which of them one visit takes along ({@code OneVisit}). The rooms
 * inside, each with its own page, from the bottom up: {@code task}, what is asked and given; {@code
 * lattice}, distances and stock; {@code ring}, ways beside walls; {@code depth}, steps down; {@code
 * cover}, what of the rings is needed; {@code order}, the tour; {@code motion}, moves, entries and
 * feeds; and apart from these {@code face}, finishing sculpted faces, and {@code bound}, what no
 * plan can beat.
 *
 * <p>From outside only this package, {@code task}, and the entries of {@code face} and {@code
 * bound} are used. Uses {@code region} by way of its results, {@code machine}, {@code grid}; writes
 * no text. The simulator shares nothing with it.
 */
package plyscape.toolpath;
