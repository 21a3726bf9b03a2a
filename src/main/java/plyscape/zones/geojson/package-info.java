/**
 * Maps in GeoJSON (RFC 7946, and the {@code crs} member of the format of 2008).
 *
 * <p>In: a text file. Out: what {@code zones.map} promises. Entry: {@link
 * plyscape.zones.geojson.GeoJsonFormat}. Faults of the JSON say line and column.
 */
package plyscape.zones.geojson;
