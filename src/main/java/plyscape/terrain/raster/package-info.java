/**
 * What every raster is, whatever its format.
 *
 * <p>{@link plyscape.terrain.raster.Raster} is a file as it is: rows in the file's order, voids
 * NaN, placed by an {@link plyscape.terrain.raster.Affine}. Beside it stand views of one, mosaics
 * of several, sampling between cells, and what several formats share: numbers in text, world files,
 * the limits of what is taken.
 */
package plyscape.terrain.raster;
