/**
 * Elevation rasters to the terrain over the carved area.
 *
 * <p>In: {@link plyscape.job.TerrainSpec} (file, crop, smoothing), the panel's size and the
 * smallest cutter. Out: one {@link plyscape.terrain.Terrain}: elevations in metres at cell centres
 * in panel mm (Y up), and how the ground lies on the panel.
 *
 * <p>The order is fixed: reproject, crop, fill voids, smooth. Inside, {@link
 * plyscape.terrain.raster.Raster} is a file as it is (one reader a format, rows in the file's
 * order) and {@link plyscape.terrain.GroundRaster} the same on a metric plane, row 0 in the south.
 *
 * <p>Always true afterwards: no value is NaN; the grid covers the carved area; the carved area's
 * edges lie on the 0.001 mm grid; same file, same numbers.
 *
 * <p>Uses {@code grid}, {@code job}, {@code fault} and its own inner packages, of which {@code crs}
 * and {@code tiff} use GeoTools, as no other package does.
 */
package plyscape.terrain;
