/**
 * Coordinate reference systems: what one is, and the way from one to another.
 *
 * <p>In: a code such as EPSG:32632, or well-known text. Out: {@link plyscape.terrain.crs.GroundCrs}
 * for what it is, {@link plyscape.terrain.crs.PlaneMap} for the way between two, x east and y north
 * whatever a register says of axes. Common metric grids are plain arithmetic of {@code grid}; the
 * rest is GeoTools, whose register costs a second at its first use. How far off a way without its
 * grid may be is known and can be asked.
 */
package plyscape.terrain.crs;
