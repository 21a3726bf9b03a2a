/**
 * From elevations, bands and zones to the exact tiling of the carved area by plies.
 *
 * <p>In: the terrain over the carved area, falling breaks between plies, zones on the panel; mm.
 * Out: a {@link plyscape.region.Tiling}: regions, exposed parts and nested pockets, mm. Always true
 * afterwards: every coordinate lies on the 0.001 mm grid; polygons are valid, shells
 * counter-clockwise; neighbours share all vertices of their common line; regions of one ply don't
 * share a line; areas add up to the carved area; each pocket lies in the one above; the same input
 * gives the same tiling, whatever the number of threads. {@link plyscape.region.TileCutter} cuts
 * one such tiling into several, for panels that butt, with the same promises.
 *
 * <p>Inside, coordinates are whole numbers of 0.001 mm and all decisions are exact. Uses {@code
 * bands}, {@code zones}, {@code terrain} (its record only), {@code planar}, {@code grid}.
 */
package plyscape.region;
