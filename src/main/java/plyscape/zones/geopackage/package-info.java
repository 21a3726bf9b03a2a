/**
 * Maps in GeoPackages (OGC 12-128r18, an SQLite database).
 *
 * <p>In: a database file, opened read-only; nothing is written beside it. Out: what {@code
 * zones.map} promises, a feature's {@code layer} being its table. Entry: {@link
 * plyscape.zones.geopackage.GeoPackageFormat}.
 */
package plyscape.zones.geopackage;
