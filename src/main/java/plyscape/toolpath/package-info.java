/**
 * From pockets and cutters to moves.
 *
 * <p>In: one {@link plyscape.toolpath.PocketLevel} a ply that is cut, nested, panel mm, depths
 * positive down; tools and machine limits. Out: one {@link plyscape.toolpath.ToolRun} a cutter that
 * is used, largest first, each a list of passes of {@link plyscape.machine.Move}s that start and
 * end at safe height.
 *
 * <p>Always true afterwards: a cutter's centre at a depth is never nearer to a wall of the pocket
 * that bounds this depth than its radius less 0.005 mm; a rapid never goes through wood that still
 * stands; no pass goes farther below what it finds than the tool's stepdown, except in wood
 * narrower than a lattice step; the same input gives the same moves.
 *
 * <p>How: distances from the walls on a lattice ({@code DistanceField}), contours of them as rings
 * ({@code RingTracer}; the one along the wall made exact by {@code WallRing}, places narrower than
 * the lattice found by {@code TightPlaces}, led into every corner by {@code OffsetCorners} and
 * {@code CornerWays}), how deep each cutter reaches where ({@code Reach}), which cutters pay
 * ({@code ToolChoice}), the order of depths ({@code DepthPlan}), the stretches of rings that a pass
 * needs ({@code RingCover}; {@code LeftSpots} for what no ring clears), their order ({@code
 * PieceOrder}), and entries, links and feeds ({@code PassCutter}) against the planner's own picture
 * of the stock ({@code Stock}).
 *
 * <p>Uses {@code region} by way of its results, {@code machine}, {@code grid}; writes no text. The
 * simulator shares nothing with it.
 */
package plyscape.toolpath;
