/**
 * GeoTIFF: tags, blocks, packings, predictors, masks and the keys that place it.
 *
 * <p>In: a file. Out: a {@code terrain.raster.Raster} that reads only the blocks that a window
 * needs. Packings that aren't known here go to the GeoTools bundle's reader, and CRSs that are
 * spelled out in keys are put together by our own code first. Entry: {@link
 * plyscape.terrain.tiff.TiffRaster}.
 */
package plyscape.terrain.tiff;
