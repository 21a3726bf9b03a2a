/**
 * The panel as it lies: neither flat on the table nor equally thick. Regions don't depend on that,
 * depths do.
 *
 * <p>In: probed heights of the top face, depths by place from {@code layup}, moves of the flat
 * plan. Out: {@link plyscape.bend.TopMap}, the face through the heights; {@link
 * plyscape.bend.Bend}, which turns a depth of the flat plan into the depth below the flat top face
 * at a place; {@link plyscape.bend.BentMoves}, the same for whole moves.
 *
 * <p>Always true: every point of a bent move lies within 0.005 mm of the bent depth, rounding to
 * 0.001 mm counted; without a map and without readings by place the bend changes nothing. The face
 * is bilinear where readings are all the nodes of a rectangular grid, else linear over Delaunay
 * triangles; of four readings on one circle the diagonal from the leftmost (of those the lowest) is
 * taken; beyond the readings it has the height of the nearest place of their hull.
 *
 * <p>Panel mm, depths positive down, heights positive up. Uses {@code layup}, {@code machine},
 * {@code grid}, {@code region} and {@code files}; the simulation shares none of it.
 */
package plyscape.bend;
