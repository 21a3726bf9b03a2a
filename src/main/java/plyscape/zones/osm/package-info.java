/**
 * Maps of OpenStreetMap: extracts in XML 0.6 and in its protocol buffer format.
 *
 * <p>In: a file of nodes, ways and relations, of up to a country. Out: what {@code zones.map}
 * promises: tagged nodes as points, ways as lines or areas by their tags ({@link
 * plyscape.zones.osm.AreaTags}), multipolygons and boundaries as areas put together from their
 * members whatever their order, direction and role, routes as lines. Properties are the tags, all
 * text. Entry: {@link plyscape.zones.osm.OsmFormat}.
 *
 * <p>The file is read several times ({@link plyscape.zones.osm.OsmReader}), each time for what the
 * time before has shown to be needed, so that what is held doesn't grow with the file but by four
 * bytes a node. What is broken (rings that don't close, members and nodes that aren't in the file)
 * is left out and counted in the map's notes.
 */
package plyscape.zones.osm;
