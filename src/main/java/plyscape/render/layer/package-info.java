/**
 * Layers as vector files: a ply's exposed area and its pocket as SVG, GeoJSON or DXF, and SVG
 * layers read back.
 *
 * <p>In: a {@link plyscape.plan.Landscape}, or the text of a layer. Out: a {@link
 * plyscape.render.layer.LayerFile} a ply, or the rings in panel mm, Y up. Always true: coordinates
 * are multiples of 0.001 mm, as the tiling's are, so a layer read back is the tiling; names from
 * the user's files are escaped for the format they go into. Uses {@code plan} and the records that
 * a plan holds, {@code fault}, {@code text}.
 */
package plyscape.render.layer;
