/**
 * Exact arrangements of lines on the 0.001 mm grid: noding, faces, what winds around each face, and
 * polygons picked from them.
 *
 * <p>In: directed outlines, whole numbers of 0.001 mm ({@link plyscape.planar.Linework}). Out: a
 * {@link plyscape.planar.PlanarMap}: chains that meet only in their ends, with the face on either
 * side. Always true afterwards: nothing has moved by more than 0.0008 mm, nothing was turned over,
 * faces tile the plane; the same input gives the same map. All decisions are exact. What zones
 * unite and what regions tile is both done here, so that either is quick on maps with thousands of
 * crossings. Uses {@code grid}, and polygons of a geometry library to hand results on.
 */
package plyscape.planar;
