/**
 * Distances from a pocket's walls, and what has been cut, on one square lattice over the carved
 * area.
 *
 * <p>In: edges of pockets, panel mm; chords that a disk moves along. Out: for each node the exact
 * distance to the nearest wall, positive inside ({@link plyscape.toolpath.lattice.DistanceField});
 * the nodes that a disk newly covers ({@link plyscape.toolpath.lattice.Sweep}); how deep the panel
 * is cut at each node, and, where the edge of a cut goes through a node's cell, in each
 * sixty-fourth of it ({@link plyscape.toolpath.lattice.Stock}). Node (i, j) has the index {@code j
 * * columns + i}, rows from the lowest Y up.
 *
 * <p>Always true: distances at nodes are exact to single precision, between nodes bilinear; a sweep
 * counts a node once for each chord that adds it; wood that stands under a disk is never missed,
 * and not seen where it is farther off than a fifth of a lattice step; {@link
 * plyscape.toolpath.lattice.CoarseMap} and {@link plyscape.toolpath.lattice.BlockRange} may name a
 * block too many, never one too few.
 *
 * <p>Knows no cutters, levels or order of work. Uses {@code grid}.
 */
package plyscape.toolpath.lattice;
