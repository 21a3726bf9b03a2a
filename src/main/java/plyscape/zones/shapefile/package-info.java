/**
 * Shapefiles: shapes in {@code .shp}, their table in {@code .dbf}, its letters' encoding in {@code
 * .cpg} and the CRS in {@code .prj}, beside each other or in a zip archive.
 *
 * <p>In: the {@code .shp} or the archive. Out: what {@code zones.map} promises; holes are placed by
 * where they lie, {@code layer} is the file's name where an archive has several. The index ({@code
 * .shx}) isn't needed: records are read one after the other. By ESRI's technical description of
 * July 1998 and the dBASE III table format. Entry: {@link
 * plyscape.zones.shapefile.ShapefileFormat}.
 */
package plyscape.zones.shapefile;
