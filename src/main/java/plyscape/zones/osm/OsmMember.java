package plyscape.zones.osm;

/**
 * A member of a relation. Immutable.
 *
 * @param kind what it is
 * @param id its id among its kind
 * @param role what the relation calls it, often wrong or ""
 */
record OsmMember(OsmKind kind, long id, String role) {}
