/**
 * From maps to zones on the panel.
 *
 * <p>In: zone settings, map files (GeoJSON, GeoPackage), rasters of classes as plain grids, and how
 * the ground lies on the panel. Out: a {@link plyscape.zones.Zone} for each setting: one polygonal
 * area, panel mm, with how many features made it and which were skipped and why. Always true
 * afterwards: areas are valid, within the carved area, and the same for the same input. Coordinates
 * are x east, y north whatever the file's CRS says of its axes. Uses {@code grid}, {@code job},
 * {@code planar}, and of {@code terrain} the conversions between CRSs.
 */
package plyscape.zones;
