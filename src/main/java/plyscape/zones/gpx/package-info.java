/**
 * Tracks, routes and waypoints in GPX 1.0 and 1.1.
 *
 * <p>In: an XML file. Out: what {@code zones.map} promises: a track as the lines of its segments,
 * which are never joined, a route as a line, a waypoint as a point; {@code layer} is {@code
 * tracks}, {@code routes} or {@code waypoints}. Longitude and latitude on WGS 84. Entry: {@link
 * plyscape.zones.gpx.GpxFormat}.
 */
package plyscape.zones.gpx;
