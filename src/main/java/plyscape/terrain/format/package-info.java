/**
 * Elevation formats other than GeoTIFF, one reader each: ESRI ASCII grid, SRTM HGT, PNG, XYZ text,
 * LAS point clouds.
 *
 * <p>In: a file. Out: a {@code terrain.raster.Raster}, held in memory as a whole. What a file says
 * that contradicts itself is an {@link plyscape.fault.InputFault} with the line where there are
 * lines.
 */
package plyscape.terrain.format;
