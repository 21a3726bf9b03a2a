/**
 * Maps in KML 2.2, and zipped as KMZ.
 *
 * <p>In: an XML file, or an archive with one. Out: what {@code zones.map} promises: a feature a
 * placemark, with its name, its description and its extended data as properties, {@code layer}
 * being the folder it lies in. Longitude and latitude on WGS 84. Links to other files aren't
 * followed, and counted. Entry: {@link plyscape.zones.kml.KmlFormat}.
 */
package plyscape.zones.kml;
